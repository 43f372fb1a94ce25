#include "tests/engine/drawing/read_back.h"

#include <catch2/catch.hpp>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <sstream>

namespace tests {
namespace {

std::string attribute_of(const std::string& line, const std::string& name) {
    const auto begin = line.find(' ' + name + "=\"");
    if (begin == std::string::npos) return "";
    const auto from = begin + name.size() + 3;
    return line.substr(from, line.find('"', from) - from);
}

double number_of(const std::string& line, const std::string& name) {
    return std::stod(attribute_of(line, name));
}

// Six numbers, as in a PDF: where x, y and the origin go.
std::array<double, 6> transform_of(const std::string& line) {
    std::array<double, 6> parts{};
    std::istringstream in{attribute_of(line, "transform")};
    for (double& part : parts) in >> part;
    return parts;
}

bool holds(const std::string& line, const char* part) {
    return line.find(part) != std::string::npos;
}

}  // namespace

std::string output_of(const std::string& command) {
    FILE* pipe = popen(command.c_str(), "r");
    REQUIRE(pipe != nullptr);
    std::string output;
    std::array<char, 4096> part{};
    for (std::size_t count = 0; (count = fread(part.data(), 1, part.size(), pipe)) > 0;)
        output.append(part.data(), count);
    const int status = pclose(pipe);
    INFO(command);
    REQUIRE(status == 0);
    return output;
}

std::string name_of_run(const std::string& test) { return test + "_" + std::to_string(getpid()); }

void write_file(const std::filesystem::path& path, std::string_view bytes) {
    std::ofstream(path, std::ios::binary) << bytes;
}

std::vector<TracedStroke> traced_strokes(const std::filesystem::path& pdf, int page) {
    std::istringstream trace{
        output_of("mutool trace " + pdf.string() + " " + std::to_string(page) + " 2>&1")};
    std::vector<TracedStroke> strokes;
    std::array<double, 6> to_page{};
    bool is_stroke = false;
    for (std::string line; std::getline(trace, line);) {
        if (holds(line, "<stroke_path")) {
            strokes.emplace_back();
            to_page = transform_of(line);
            is_stroke = true;
        } else if (holds(line, "</stroke_path")) {
            is_stroke = false;
        }
        const bool is_end = holds(line, "<moveto") || holds(line, "<lineto");
        if (!is_stroke || (!is_end && !holds(line, "<curveto"))) continue;
        const double x = number_of(line, is_end ? "x" : "x3");
        const double y = number_of(line, is_end ? "y" : "y3");
        strokes.back().push_back({to_page[0] * x + to_page[2] * y + to_page[4],
                                  to_page[1] * x + to_page[3] * y + to_page[5]});
    }
    return strokes;
}

std::vector<TracedWord> traced_words(const std::filesystem::path& pdf) {
    std::istringstream boxes{output_of("pdftotext -bbox " + pdf.string() + " -")};
    std::vector<TracedWord> words;
    for (std::string line; std::getline(boxes, line);) {
        if (!holds(line, "<word")) continue;
        const auto begin = line.find('>') + 1;
        words.push_back({line.substr(begin, line.rfind('<') - begin), number_of(line, "xMin"),
                         number_of(line, "xMax")});
    }
    return words;
}

GreyPicture drawn_by_poppler(const std::filesystem::path& pdf, int dots_per_inch) {
    std::istringstream file{output_of("pdftoppm -gray -singlefile -r " +
                                      std::to_string(dots_per_inch) + " " + pdf.string())};
    std::string kind;
    int most = 0;
    GreyPicture picture;
    file >> kind >> picture.width >> picture.height >> most;
    REQUIRE(kind == "P5");
    REQUIRE(most == 255);
    file.get();
    picture.pixels.assign(std::istreambuf_iterator<char>(file), {});
    REQUIRE(picture.pixels.size() ==
            static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height));
    return picture;
}

}  // namespace tests
