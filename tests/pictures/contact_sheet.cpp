// Draws the hand-drawn vine and some grown ones into a folder, for looking at. No test: pictures are judged by eye.
// Usage: contact_sheet FOLDER [SEED[:AGE] VIEW LIGHT [WxH]]...
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>

#include "render/app/memory.h"
#include "render/app/picture.h"
#include "render/gl/png.h"
#include "sim/growth/history.h"
#include "tests/support/little_vine.h"

using namespace spurwright;

int main(int count, char** words) {
    app::keep_freed_memory();
    auto studio = app::Studio::make(std::string(SPURWRIGHT_SOURCE) + "/assets");
    if (!studio) {
        std::fprintf(stderr, "%s\n", studio.error().key.name.data());
        for (const auto& a : studio.error().arguments)
            if (const auto* text = std::get_if<std::string>(&a.value)) std::fprintf(stderr, "  %s: %s\n", a.gap.data(), text->c_str());
        return 3;
    }
    for (int i = 2; i + 2 < count; i += 3) {
        const std::string seed = words[i], view = words[i + 1], light = words[i + 2];
        app::PictureWish wish;
        wish.view = *scene::read_view(view);
        wish.sky = *scene::read_sky(light);
        if (const char* size = std::getenv("SIZE")) std::sscanf(size, "%dx%d", &wish.width, &wish.height);
        Vine vine = test::little_vine();
        if (seed != "little") {
            unsigned long number = 0;
            int age = 12;
            std::sscanf(seed.c_str(), "%lu:%d", &number, &age);
            growth::Site site;
            site.seed = number;
            site.age = age;
            auto grown = growth::grow_vine(site);
            if (!grown) return 2;
            vine = *std::move(grown);
        }
        const auto from = std::chrono::steady_clock::now();
        auto pixels = (*studio)->draw(vine, wish);
        const double ms = std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count();
        if (!pixels) return 3;
        std::string name = std::string(words[1]) + "/" + seed + "-" + view + "-" + light + ".png";
        for (char& c : name) if (c == ':') c = '_';
        std::ofstream(name, std::ios::binary) << gl::png_bytes(*pixels, wish.width, wish.height);
        std::printf("%s %.0f ms\n", name.c_str(), ms);
    }
    return 0;
}
