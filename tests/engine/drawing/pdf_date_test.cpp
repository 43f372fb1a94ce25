#include "engine/drawing/pdf_date.h"

#include "engine/drawing/pdf.h"

#include "tests/engine/drawing/read_back.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <cstdlib>

using namespace engine;

TEST_CASE("an epoch is told as a date", "[engine][drawing]") {
    CHECK(date_of_epoch("0") == "1970-01-01T00:00:00Z");
    CHECK(date_of_epoch("951782400") == "2000-02-29T00:00:00Z");
    CHECK(date_of_epoch("253402300799") == "9999-12-31T23:59:59Z");
    for (const char* wrong : {"", "-1", "253402300800", "12a", " 12", "99999999999999999999"})
        CHECK(date_of_epoch(wrong) == std::nullopt);
}

TEST_CASE("a PDF has the date of SOURCE_DATE_EPOCH", "[engine][drawing]") {
    const char* before = std::getenv("SOURCE_DATE_EPOCH");
    const std::string kept = before == nullptr ? "" : before;
    setenv("SOURCE_DATE_EPOCH", "1700000000", 1);
    const auto bytes = pdf_bytes({"Date", {Page{Paper::a4}}, {}});
    if (before == nullptr) {
        unsetenv("SOURCE_DATE_EPOCH");
    } else {
        setenv("SOURCE_DATE_EPOCH", kept.c_str(), 1);
    }
    REQUIRE(bytes);
    const tests::ScratchFolder folder{tests::name_of_run("pdf_date_test")};
    const auto path = folder.path / "page.pdf";
    tests::write_file(path, *bytes);
    const std::string about = tests::output_of("pdfinfo -isodates " + path.string());
    CAPTURE(about);
    CHECK(about.find("CreationDate:    2023-11-14T22:13:20Z") != std::string::npos);
}
