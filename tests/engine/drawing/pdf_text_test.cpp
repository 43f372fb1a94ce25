#include "engine/drawing/pdf.h"

#include "tests/engine/drawing/pdf_file.h"
#include "tests/engine/drawing/sample_pages.h"

#include <catch2/catch.hpp>

#include <numeric>

using namespace engine;
using tests::count_of;
using tests::PdfFile;

namespace {

std::string with_single_spaces(const std::string& text) {
    std::string single;
    for (const char c : text) {
        const bool is_space = c == ' ' || c == '\n';
        if (!is_space) single += c;
        if (is_space && !single.empty() && single.back() != ' ') single += ' ';
    }
    return single;
}

}  // namespace

TEST_CASE("texts of a PDF can be searched", "[engine][drawing]") {
    Page page = tests::sample_page(paper_size(Paper::a4));
    page.draw_text({20, 150}, "\u00D6l, \u0416\u03A9, 1\u00BD \u2334 \u94BB \U0001F6B2");
    const PdfFile file{{"Texts", {page}, {}}};
    const std::string text =
        with_single_spaces(tests::output_of("pdftotext -layout " + file.path.string() + " -"));
    std::size_t checked = 0;
    for (const PageItem& item : page.items()) {
        const auto* drawn = std::get_if<DrawnText>(&item);
        if (drawn == nullptr) continue;
        CAPTURE(drawn->text, text);
        CHECK(text.find(drawn->text) != std::string::npos);
        ++checked;
    }
    CHECK(checked == 13);
}

TEST_CASE("all fonts of a PDF are in it", "[engine][drawing]") {
    const PdfFile file{tests::sample_document()};
    const std::string fonts = tests::output_of("pdffonts " + file.path.string());
    CAPTURE(fonts);
    CHECK(count_of(fonts, " yes yes yes ") == 3);  // embedded, a subset, with characters
    CHECK(count_of(fonts, "\n") == 5);
}

TEST_CASE("a text is as wide as was foretold", "[engine][drawing]") {
    const auto weight = GENERATE(LetterWeight::regular, LetterWeight::bold);
    const auto* word = GENERATE("A1", "stop-at-18-3/8", "\u2300\u2220\u2300\u2220",
                                "Wolle-Taver-fiffl", "iiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiii");
    const auto size = GENERATE(2.5, 7.0);
    CAPTURE(word, size);
    Page page{Paper::a3, PaperTurn::landscape};
    page.draw_text({50, 100}, word, {.size = size, .weight = weight});
    const PdfFile file{{"Width", {page}, {}}};
    const auto words = tests::traced_words(file.path);
    REQUIRE(words.size() == 1);
    REQUIRE(words[0].text == word);
    const double width = (words[0].right - words[0].left) * 25.4 / 72.0;
    CHECK(width == Approx(text_width(word, size, weight)).margin(0.0005 * size));
}

TEST_CASE("texts that follow each other on a line keep their places", "[engine][drawing]") {
    Page page{Paper::a3, PaperTurn::landscape};
    for (int i = 0; i < 20; ++i)
        page.draw_text({20.0 + 19.0 * i, 100}, "iiiiiiiiiiiiiii", {.size = 4.5});
    const PdfFile file{{"Row", {page}, {}}};
    const auto words = tests::traced_words(file.path);
    REQUIRE(words.size() == 20);
    for (std::size_t i = 0; i < words.size(); ++i)
        CHECK(words[i].left * 25.4 / 72 == Approx(20.0 + 19.0 * double(i)).margin(0.002));
}

TEST_CASE("anchors set the start, the middle or the end of a text", "[engine][drawing]") {
    Page page{Paper::a4};
    for (const auto anchor : {TextAnchor::start, TextAnchor::middle, TextAnchor::end})
        page.draw_text({100, 50 + 10.0 * static_cast<int>(anchor)}, "counter", {.anchor = anchor});
    const PdfFile file{{"Anchors", {page}, {}}};
    const auto words = tests::traced_words(file.path);
    REQUIRE(words.size() == 3);
    const double at = 100 * 72 / 25.4;
    CHECK(words[0].left == Approx(at).margin(0.02));
    CHECK((words[1].left + words[1].right) / 2 == Approx(at).margin(0.02));
    CHECK(words[2].right == Approx(at).margin(0.02));
}

TEST_CASE("texts of any bytes leave a PDF whole", "[engine][drawing]") {
    std::string all(256, ' ');
    std::iota(all.begin(), all.end(), '\0');
    Page page{Paper::a4};
    page.draw_text({20, 50}, all);
    page.draw_text({20, 60}, "\xED\xA0\x80 \xF8\x88\x80\x80\x80 \xC3");
    const PdfFile file{{all, {page}, {{all, 0, 0}}}};
    CHECK(tests::output_of("mutool trace " + file.path.string() + " 2>&1 >/dev/null").empty());
    const auto text = tests::output_of("pdftotext " + file.path.string() + " - 2>&1");
    CAPTURE(text);
    CHECK(text.find("ABCDEFG") != std::string::npos);
    CHECK(text.find("\uFFFD") != std::string::npos);
}
