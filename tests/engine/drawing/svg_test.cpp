#include "engine/drawing/svg.h"

#include "engine/drawing/pdf.h"
#include "engine/drawing/svg_writing.h"

#include "tests/engine/drawing/read_back.h"
#include "tests/engine/drawing/sample_pages.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numeric>

using namespace engine;

namespace {

struct SvgFile {
    explicit SvgFile(const Page& page, std::string_view title = {}) {
        const auto text = svg_text(page, title);
        if (!text) FAIL(to_text(text.error()));
        tests::write_file(path, *text);
    }

    std::string found(const std::string& xpath) const {
        return tests::output_of("xmllint --xpath '" + xpath + "' " + path.string());
    }

    tests::ScratchFolder folder{tests::name_of_run("svg_test")};
    std::filesystem::path path = folder.path / "page.svg";
};

}  // namespace

TEST_CASE("an SVG file is well-formed, in millimetres", "[engine][drawing]") {
    const SvgFile file{tests::sample_page(paper_size(Paper::letter)), "Bars <1> & \"2\""};
    CHECK(tests::output_of("xmllint --noout " + file.path.string() + " 2>&1").empty());
    CHECK(file.found("string(/*/@width)") == "215.9mm\n");
    CHECK(file.found("string(/*/@height)") == "279.4mm\n");
    CHECK(file.found("string(/*/@viewBox)") == "0 0 215.9 279.4\n");
    CHECK(file.found("string(//*[local-name()=\"title\"])") == "Bars <1> & \"2\"\n");
}

TEST_CASE("texts of an SVG file are texts", "[engine][drawing]") {
    const Page page = tests::sample_page(paper_size(Paper::a4));
    const SvgFile file{page};
    int count = 0;
    for (const PageItem& item : page.items()) {
        const auto* drawn = std::get_if<DrawnText>(&item);
        if (drawn == nullptr) continue;
        const auto element = "(//*[local-name()=\"text\"])[" + std::to_string(++count) + "]";
        CHECK(file.found("string(" + element + ")") == drawn->text + "\n");
        const double width = std::stod(file.found("string(" + element + "/@textLength)"));
        CHECK(width ==
              Approx(text_width(drawn->text, drawn->lettering.size, drawn->lettering.weight))
                  .margin(0.0001));
    }
    CHECK(file.found("count(//*[local-name()=\"text\"])") == std::to_string(count) + "\n");
}

TEST_CASE("another reader finds the lines of an SVG file where the PDF has them",
          "[engine][drawing]") {
    const Page page = tests::sample_page(paper_size(Paper::a4));
    const SvgFile file{page};
    const auto of_svg = file.folder.path / "of_svg.pdf";
    const auto of_page = file.folder.path / "of_page.pdf";
    tests::output_of("rsvg-convert -f pdf -o " + of_svg.string() + " " + file.path.string());
    tests::write_file(of_page, pdf_bytes({"Page", {page}, {}}).value());
    const auto found = tests::traced_strokes(of_svg);
    const auto expected = tests::traced_strokes(of_page);
    REQUIRE(found.size() == expected.size());
    std::size_t compared = 0;
    for (std::size_t i = 0; i < found.size(); ++i) {
        const auto& a = found[i];
        const auto& b = expected[i];
        CAPTURE(i);
        CHECK(std::hypot(a.front().x - b.front().x, a.front().y - b.front().y) < 0.02);
        if (a.size() != b.size()) continue;  // curves are parted anew
        for (std::size_t j = 0; j < a.size(); ++j)
            CHECK(std::hypot(a[j].x - b[j].x, a[j].y - b[j].y) < 0.02);  // points; 0.007 mm
        ++compared;
    }
    CHECK(compared + 3 >= found.size());
}

TEST_CASE("texts of any bytes leave an SVG file well-formed", "[engine][drawing]") {
    std::string all(256, ' ');
    std::iota(all.begin(), all.end(), '\0');
    Page page{Paper::a4};
    page.draw_text({20, 50}, all);
    page.draw_text({20, 60}, "]]> <!-- & \xEF\xBF\xBE \xED\xA0\x80 \xC3");
    const SvgFile file{page, all};
    CHECK(tests::output_of("xmllint --noout " + file.path.string() + " 2>&1").empty());
}

TEST_CASE("numbers of an SVG file are short", "[engine][drawing]") {
    CHECK(svg_number(12.7) == "12.7");
    CHECK(svg_number(100.0) == "100");
    CHECK(svg_number(-0.00001) == "0");
    CHECK(svg_number(-3.14159265) == "-3.1416");
    CHECK(svg_number(0.00005) == "0.0001");
}

TEST_CASE("a page that lacks something becomes no SVG file", "[engine][drawing]") {
    Page page{Paper::a4};
    page.draw_text({20, std::nan("")}, "stop");
    const auto text = svg_text(page);
    REQUIRE(!text);
    CHECK(text.error().code == ErrorCode::invalid_value);
    CHECK(text.error().message.rfind("the text \"stop\" cannot be drawn", 0) == 0);
}
