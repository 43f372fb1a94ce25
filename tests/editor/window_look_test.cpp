#include "editor/window_look.h"

#include "editor/commands.h"
#include "editor/keys.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>

using editor::Theme;
using tests::HeadlessUi;
using tests::TemporaryFolder;

namespace {

// Relative luminance and contrast as in WCAG 2.1, "relative luminance" and "contrast ratio".
double luminance(ImU32 packed) {
    const std::array<double, 3> weights{0.2126, 0.7152, 0.0722};
    double sum = 0.0;
    for (unsigned k = 0; k < 3; ++k) {
        const double part = ((packed >> (8 * k)) & 0xFFU) / 255.0;
        sum +=
            weights[k] * (part <= 0.03928 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4));
    }
    return sum;
}

double contrast(ImU32 a, ImU32 b) {
    const double one = luminance(a);
    const double other = luminance(b);
    return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

}  // namespace

TEST_CASE("how the window looks is there again in the next run", "[editor][look]") {
    const TemporaryFolder folder;
    CHECK(editor::read_window_look(folder.path()) == editor::WindowLook{});
    const editor::WindowLook look{Theme::dark, 1.25F, true, {false, true, false}};
    editor::write_window_look(look, folder.path());
    CHECK(editor::read_window_look(folder.path()) == look);
    CHECK(editor::read_window_look({}) == editor::WindowLook{});
}

TEST_CASE("a look that cannot be read is the usual one", "[editor][look]") {
    const TemporaryFolder folder;
    for (const char* text : {"", "[]", "{\"theme\": 3, \"text_scale\": \"big\", \"folded\": 7}",
                             "{\"folded\": [0, \"yes\"]}", "\x89PNG"}) {
        std::ofstream(folder.path() / "window.json") << text;
        CHECK(editor::read_window_look(folder.path()) == editor::WindowLook{});
    }
    std::ofstream(folder.path() / "window.json") << R"({"text_scale": 1e9})";
    CHECK(editor::read_window_look(folder.path()).text_scale == editor::most_text_scale);
}

TEST_CASE("the look changes by key, and back", "[editor][look]") {
    HeadlessUi ui;
    ui.press('D', editor::key::left_control, editor::key::left_shift);
    CHECK(ui.desk.ui.theme == Theme::dark);
    editor::run_command(ui.desk, "view.dark");
    CHECK(ui.desk.ui.theme == Theme::light);
}

// WCAG 2.1, success criterion 1.4.3 (AA): 4.5 to 1 for text.
TEST_CASE("text can be read on what it lies on, light and dark", "[editor][look]") {
    const HeadlessUi ui;  // has a context for the style
    for (const auto theme : {Theme::light, Theme::dark}) {
        editor::set_style(1.0F, theme);
        INFO((theme == Theme::dark ? "dark" : "light"));
        namespace colour = editor::colour;
        for (const ImU32 ground : {colour::panel, colour::paper, colour::sheet}) {
            for (const ImU32 text : {colour::ink, colour::quiet, colour::dye, colour::red})
                CHECK(contrast(text, ground) >= 4.5);
        }
        for (const ImU32 ground : {colour::dye_wash, colour::field_hover}) {
            CHECK(contrast(colour::ink, ground) >= 4.5);
            CHECK(contrast(colour::quiet, ground) >= 4.5);
        }
        CHECK(contrast(colour::ink, colour::dye_coat) >= 4.5);
        CHECK(contrast(colour::faint, colour::panel) >= 3.0);  // what cannot be done is exempt
        CHECK(contrast(colour::dye, colour::dye_wash) >= 4.5);
        CHECK(contrast(colour::amber, colour::amber_ground) >= 4.5);
        CHECK(contrast(colour::red, colour::red_ground) >= 4.5);
        CHECK(contrast(colour::quiet, colour::note_ground) >= 4.5);
        CHECK(contrast(colour::scribed, colour::dye_ground) >= 4.5);
        CHECK(contrast(colour::tape_text, colour::tape) >= 4.5);
        CHECK(contrast(colour::ink, colour::metal) >= 4.5);
    }
}
