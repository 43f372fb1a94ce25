// A document written as a PDF, for programs that read it back.
#pragma once

#include "engine/drawing/pdf.h"

#include "tests/engine/drawing/read_back.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

namespace tests {

inline std::string pdf_of(const engine::Document& document) {
    const auto bytes = engine::pdf_bytes(document);
    if (!bytes) FAIL(engine::to_text(bytes.error()));
    return *bytes;
}

// In a folder that goes with it.
struct PdfFile {
    explicit PdfFile(const engine::Document& document) { write_file(path, pdf_of(document)); }

    ScratchFolder folder{name_of_run("pdf_file")};
    std::filesystem::path path = folder.path / "pages.pdf";
};

inline std::size_t count_of(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
    return count;
}

}  // namespace tests
