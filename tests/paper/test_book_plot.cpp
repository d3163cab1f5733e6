// A block of reference vines drawn: a whole PNG of its size, the same each time, with the data it shows beside it.
#include <doctest/doctest.h>

#include <algorithm>
#include <cstdint>

#include "tests/cli/shed.h"

using namespace spurwright::test;

namespace {

std::uint32_t big_endian(const std::string& bytes, std::size_t at) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < 4; ++i) value = value << 8 | static_cast<unsigned char>(bytes[at + i]);
    return value;
}

} // namespace

TEST_CASE("the invented block is drawn with its data beside, in every language, the same bytes each time") {
    const Shed shed;
    REQUIRE(shed.run({"demo-block"}).status == 0);
    const std::string picture = shed.folder.file("plot ñ.png"), again = shed.folder.file("again.png");
    const Ran drawn = shed.run({"book", "plot", "demo-invented", "-o", picture, "--json"});
    CHECK_MESSAGE(drawn.status == 0, drawn.err);
    CHECK(schema_fault("verb-book-plot", drawn.out) == "");
    const std::string bytes = file_text(picture);
    REQUIRE(bytes.size() > 20'000);
    CHECK(bytes.starts_with("\x89PNG\r\n\x1a\n"));
    CHECK(bytes.ends_with(std::string("IEND\xae\x42\x60\x82")));
    CHECK(big_endian(bytes, 16) == 1280);
    CHECK(big_endian(bytes, 20) == 960);
    const std::string data = file_text(shed.folder.file("plot ñ.csv"));
    CHECK(std::count(data.begin(), data.end(), '\n') == 481);
    shed.run({"book", "plot", "demo-invented", "-o", again});
    CHECK(file_text(again) == bytes);
    for (const char* language : {"es", "es-ES", "es-CL"}) {
        CHECK(shed.run({"book", "plot", "demo-invented", "-o", again, "--language", language}).out.find('[') == std::string::npos);
        CHECK(file_text(again) != bytes); // other words
    }
    CHECK(shed.run({"book", "plot", "demo-invented", "-o", again, "--row", "2", "--from", "2026"}).status == 0); // one winter or two
}

TEST_CASE("one vine in one winter is drawn too; what is wrong is refused and nothing is written") {
    const Shed shed;
    const std::string picture = shed.folder.file("p.png");
    CHECK(shed.run({"book", "plot", "north", "-o", picture}).status == 2);
    REQUIRE(shed.run({"book", "block", "north", "--spacing", "1.8m"}).status == 0);
    CHECK(shed.run({"book", "plot", "north", "-o", picture}).err.find("was weighed yet") != std::string::npos);
    REQUIRE(shed.run({"book", "import", shed.folder.write("w.csv", "block,tag,winter,weight_kg\nnorth,a,2025,0.8\n")}).status == 0);
    CHECK(shed.run({"book", "plot", "north", "-o", shed.folder.file("p.gif")}).err.find(".png") != std::string::npos);
    const std::size_t before = shed.folder.files();
    CHECK(shed.run({"book", "plot", "nort", "-o", picture}).status == 2);
    CHECK(shed.folder.files() == before);
    CHECK(shed.run({"book", "plot", "north", "-o", picture}).status == 0);
    CHECK(file_text(picture).size() > 2'000);
}
