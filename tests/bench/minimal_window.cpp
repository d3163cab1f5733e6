// The least a program must do to show a window with OpenGL 3.3: what the window's start and memory are measured against.
// Usage: minimal_window FILE   writes FILE after its first frame, then waits to be ended.
#include <cstdio>

#include <glad/gl.h>
#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

int main(int argc, char** argv) {
    if (argc != 2 || !glfwInit()) return 2;
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    GLFWwindow* window = glfwCreateWindow(1280, 720, "minimal", nullptr, nullptr);
    if (!window) return 2;
    glfwMakeContextCurrent(window);
    if (!gladLoadGL(glfwGetProcAddress)) return 2;
    glClearColor(0.2f, 0.3f, 0.4f, 1);
    glClear(GL_COLOR_BUFFER_BIT);
    glfwSwapBuffers(window);
    if (std::FILE* file = std::fopen(argv[1], "w")) {
        std::fputs("shown\n", file);
        std::fclose(file);
    }
    while (!glfwWindowShouldClose(window)) glfwWaitEvents();
    glfwTerminate();
}
