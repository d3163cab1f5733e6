#include "render/gl/shaders.h"

#include <fstream>
#include <sstream>

namespace spurwright::gl {
namespace {

Error shader_error(TextKey key, std::string_view file, const std::string& words) {
    return {Fault::missing, key, {{"file", std::string(file)}, {"words", words}}, {std::string(file), 0, 0, 0}};
}

Result<GLuint> compiled(GLenum stage, const std::string& text, std::string_view name) {
    const GLuint shader = glCreateShader(stage);
    const char* source = text.c_str();
    glShaderSource(shader, 1, &source, nullptr);
    glCompileShader(shader);
    GLint ok = 0;
    glGetShaderiv(shader, GL_COMPILE_STATUS, &ok);
    if (ok) return shader;
    char log[2000] = "";
    glGetShaderInfoLog(shader, sizeof log, nullptr, log);
    glDeleteShader(shader);
    return failure(shader_error({"error.picture.shader"}, name, log));
}

} // namespace

Result<std::string> Shaders::read(std::string_view name) const {
    std::ifstream file(folder_ + "/" + std::string(name), std::ios::binary);
    if (!file) return failure(shader_error({"error.picture.shader-file"}, folder_ + "/" + std::string(name), ""));
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

Result<Program> Shaders::program(std::string_view vertex, std::string_view fragment,
                                 const std::vector<std::string>& defines,
                                 const std::vector<std::string>& fragment_pieces) const {
    std::string head = "#version 330 core\n";
    for (const std::string& define : defines) head += "#define " + define + "\n";
    auto frame = read("frame.glsl");
    if (!frame) return failure(frame.error());
    head += *frame;
    std::string fragment_head = head;
    for (const std::string& piece : fragment_pieces) {
        auto text = read(piece);
        if (!text) return failure(text.error());
        fragment_head += *text;
    }
    auto v = read(vertex), f = read(fragment);
    if (!v) return failure(v.error());
    if (!f) return failure(f.error());
    auto vs = compiled(GL_VERTEX_SHADER, head + *v, vertex);
    if (!vs) return failure(vs.error());
    auto fs = compiled(GL_FRAGMENT_SHADER, fragment_head + *f, fragment);
    if (!fs) {
        glDeleteShader(*vs);
        return failure(fs.error());
    }
    Program program(glCreateProgram());
    glAttachShader(program.get(), *vs);
    glAttachShader(program.get(), *fs);
    glLinkProgram(program.get());
    for (const GLuint shader : {*vs, *fs}) {
        glDetachShader(program.get(), shader);  // while attached a shader keeps megabytes of the compiler's own
        glDeleteShader(shader);
    }
    GLint ok = 0;
    glGetProgramiv(program.get(), GL_LINK_STATUS, &ok);
    if (!ok) {
        char log[2000] = "";
        glGetProgramInfoLog(program.get(), sizeof log, nullptr, log);
        return failure(shader_error({"error.picture.shader"}, fragment, log));
    }
    const GLuint block = glGetUniformBlockIndex(program.get(), "Frame");
    if (block != GL_INVALID_INDEX) glUniformBlockBinding(program.get(), block, 0);
    glUseProgram(program.get());
    if (const GLint at = glGetUniformLocation(program.get(), "detail"); at >= 0) glUniform1i(at, 0);
    if (const GLint at = glGetUniformLocation(program.get(), "shadow_map"); at >= 0) glUniform1i(at, 1);
    return program;
}

} // namespace spurwright::gl
