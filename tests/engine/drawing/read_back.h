// Files of drawn pages, read back by programs that know nothing of ours.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace tests {

// What a command of the shell writes; the test fails where it is missing or fails.
std::string output_of(const std::string& command);

// A name that no other test has, also while tests run side by side.
std::string name_of_run(const std::string& test);

void write_file(const std::filesystem::path& path, std::string_view bytes);

// Points of the page, from its top left corner.
struct TracedPoint {
    double x = 0;
    double y = 0;
};

// The ends of the lines and curves of what is stroked on a page of a PDF, as mutool traces it.
using TracedStroke = std::vector<TracedPoint>;
std::vector<TracedStroke> traced_strokes(const std::filesystem::path& pdf, int page = 1);

// A word as pdftotext finds it: points along its baseline.
struct TracedWord {
    std::string text;
    double left = 0;
    double right = 0;
};
std::vector<TracedWord> traced_words(const std::filesystem::path& pdf);

// A page as grey pixels, 0 black, as pdftoppm draws it.
struct GreyPicture {
    int width = 0;
    int height = 0;
    std::string pixels;

    int at(int x, int y) const {
        return static_cast<unsigned char>(
            pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                   static_cast<std::size_t>(x)]);
    }
};
GreyPicture drawn_by_poppler(const std::filesystem::path& pdf, int dots_per_inch);

}  // namespace tests
