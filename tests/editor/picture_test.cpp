#include "editor/picture.h"

#include "editor/command_line.h"
#include "editor/open_project.h"
#include "editor/pixel_size.h"
#include "editor/skeleton_scene.h"
#include "engine/files/whole_file.h"
#include "model/resolve/resolve.h"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <numbers>
#include <sstream>

namespace {

using engine::ViewFrom;
using engine::Viewport;

std::filesystem::path sample(const std::string& name) {
    return std::filesystem::path{BARWRIGHT_SAMPLES} / (name + ".json");
}

// A file of this test alone, gone at its end.
struct ScratchFile {
    std::filesystem::path path;

    explicit ScratchFile(const std::string& name)
        : path{std::filesystem::temp_directory_path() / ("barwright_picture_test_" + name)} {
        std::filesystem::remove(path);
    }
    ~ScratchFile() { std::filesystem::remove(path); }
    ScratchFile(const ScratchFile&) = delete;
    ScratchFile& operator=(const ScratchFile&) = delete;
};

struct Ran {
    int status = 0;
    std::string out;
    std::string err;
};

Ran run(const std::vector<std::string>& arguments) {
    std::ostringstream out;
    std::ostringstream err;
    const int status = editor::run_command_line(arguments, out, err);
    return {status, out.str(), err.str()};
}

// Share of pixels that are not bare paper.
double share_drawn(const engine::Image& image) {
    std::size_t drawn = 0;
    for (std::size_t i = 0; i < image.rgba.size(); i += 4) {
        if (image.rgba[i] != 0xF4 || image.rgba[i + 1] != 0xF1 || image.rgba[i + 2] != 0xEA)
            ++drawn;
    }
    return static_cast<double>(drawn) / (static_cast<double>(image.rgba.size()) / 4.0);
}

}  // namespace

TEST_CASE("a picture's size is two whole numbers within reason", "[editor][picture]") {
    using editor::picture_sizes;
    CHECK(editor::read_size("1600x1000", picture_sizes) == Viewport{1600, 1000});
    CHECK(editor::read_size("16x8192", picture_sizes) == Viewport{16, 8192});
    CHECK(editor::read_size("720x480", editor::window_sizes) == Viewport{720, 480});
    CHECK_FALSE(editor::read_size("719x480", editor::window_sizes));
    CHECK_FALSE(editor::read_size("480x720", editor::window_sizes));
    for (const auto* text : {"", "1600", "x", "1600x", "x900", "15x900", "900x8193", "-90x900",
                             "90 x 900", "900x900x9", "1e3x900"}) {
        CAPTURE(text);
        CHECK_FALSE(editor::read_size(text, picture_sizes));
    }
}

TEST_CASE("the four views have their names", "[editor][picture]") {
    CHECK(editor::read_view_from("front") == ViewFrom::front);
    CHECK(editor::read_view_from("left") == ViewFrom::left);
    CHECK(editor::read_view_from("top") == ViewFrom::top);
    CHECK(editor::read_view_from("corner") == ViewFrom::corner);
    CHECK_FALSE(editor::read_view_from("behind"));
}

TEST_CASE("every sample shows from every side without a display", "[editor][picture]") {
    unsetenv("DISPLAY");
    const auto* name = GENERATE("parts_box", "work_counter", "mixed_bench");
    const auto from = GENERATE(ViewFrom::front, ViewFrom::left, ViewFrom::top, ViewFrom::corner);
    CAPTURE(name);
    const auto project = editor::open_project(sample(name));
    const auto catalogue = editor::open_catalogue();
    REQUIRE(project);
    REQUIRE(catalogue);
    const auto resolved = model::resolve(*project, *catalogue);
    const Viewport size{.width = 160, .height = 120};
    const auto image =
        editor::picture_of(*project, *catalogue, resolved, {.size = size, .from = from});
    REQUIRE(image);
    CHECK(image->width == size.width);
    CHECK(image->height == size.height);
    CHECK(share_drawn(*image) > 0.03);
}

TEST_CASE("the command writes the same file at each run", "[editor][picture]") {
    unsetenv("DISPLAY");
    const ScratchFile first{"first.png"};
    const ScratchFile second{"second.png"};
    for (const auto* file : {&first, &second}) {
        const auto ran = run({"picture", sample("work_counter").string(), "--out",
                              file->path.string(), "--size", "200x150"});
        CHECK(ran.status == 0);
        CHECK(ran.err.empty());
        CHECK(ran.out == file->path.string() + ": 200 x 150 pixels\n");
    }
    const auto bytes = engine::read_whole_file(first.path);
    REQUIRE(bytes);
    CHECK(bytes->substr(1, 3) == "PNG");
    const auto again = engine::read_whole_file(second.path);
    REQUIRE(again);
    CHECK(*bytes == *again);
}

TEST_CASE("a line drawing is black and grey on white, and holds no colour", "[editor][picture]") {
    unsetenv("DISPLAY");
    const auto project = editor::open_project(sample("work_counter"));
    const auto catalogue = editor::open_catalogue();
    REQUIRE(project);
    REQUIRE(catalogue);
    const auto image =
        editor::picture_of(*project, *catalogue, model::resolve(*project, *catalogue),
                           {.size = {320, 240}, .as_line_drawing = true});
    REQUIRE(image);
    std::size_t white = 0;
    std::size_t dark = 0;
    bool has_colour = false;
    for (std::size_t i = 0; i < image->rgba.size(); i += 4) {
        const int red = image->rgba[i];
        has_colour = has_colour || image->rgba[i + 1] != red || image->rgba[i + 2] != red;
        white += red == 255 ? 1U : 0U;
        dark += red < 96 ? 1U : 0U;
    }
    CHECK_FALSE(has_colour);
    CHECK(white > image->rgba.size() / 4 / 2);
    CHECK(dark > 200);
    const ScratchFile file{"lines.png"};
    CHECK(run({"picture", sample("parts_box").string(), "--out", file.path.string(), "--size",
               "64x48", "--lines"})
              .status == 0);
}

TEST_CASE("what cannot be drawn or written is refused with a reason", "[editor][picture]") {
    const ScratchFile file{"refused.png"};
    const auto project = sample("parts_box").string();
    const auto out = file.path.string();
    const auto refused = [&](const std::vector<std::string>& arguments, const std::string& word) {
        const auto ran = run(arguments);
        CHECK(ran.status == 2);
        CHECK_THAT(ran.err, Catch::Contains(word));
        CHECK_FALSE(std::filesystem::exists(file.path));
    };
    refused({"picture", project, "--out", out, "--size", "big"}, "1600x1000");
    refused({"picture", project, "--out", out, "--from", "below"}, "corner");
    refused({"picture", project}, "--out");
    refused({"picture", "no such project.json", "--out", out}, "no such project.json");
    refused({"picture", project, "--size", "64x64", "--out", out + "/not/there.png"}, "not");
}

TEST_CASE("a project without pieces is an empty sheet", "[editor][picture]") {
    const auto image = editor::picture_of({}, {}, {}, {.size = {64, 48}});
    REQUIRE(image);
    CHECK(image->width == 64);
    CHECK(share_drawn(*image) == 0.0);
}

TEST_CASE("front is the front of the cabinets where they all look one way", "[editor][picture]") {
    model::Resolved resolved;
    CHECK(editor::front_turn(resolved) == 0.0);
    resolved.frames.resize(2);
    resolved.frames[0].quarter_turns = resolved.frames[1].quarter_turns = 3;
    CHECK(editor::front_turn(resolved) == Approx(1.5 * std::numbers::pi));
    resolved.frames[1].quarter_turns = 1;
    CHECK(editor::front_turn(resolved) == 0.0);
}
