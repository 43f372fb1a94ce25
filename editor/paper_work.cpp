#include "editor/paper_work.h"

#include "engine/drawing/pdf.h"
#include "engine/measure/tape.h"
#include "model/book/book_files.h"
#include "model/book/changed_pages.h"
#include "model/book/drill_strips.h"

#include <optional>

namespace editor {
namespace {

namespace fs = std::filesystem;

constexpr const char* unfit_words = ", not fit to work from: mend the errors first";

std::string wrote_words(std::size_t pages, const fs::path& file) {
    return "Wrote " + std::to_string(pages) + (pages == 1 ? " page" : " pages") + " into " +
           file.string();
}

engine::Result<ToWrite> as_file(const engine::Document& document,
                                const fs::path& file,
                                bool has_errors,
                                const std::string& left_out,
                                const PaperGoOn& go_on) {
    auto bytes = engine::pdf_bytes(document);
    if (!bytes) return bytes.error();
    if (!go_on(1.0)) return was_cancelled();
    ToWrite made;
    made.files.push_back({.path = file, .bytes = std::move(bytes).value()});
    made.words = wrote_words(document.pages.size(), file);
    if (has_errors) made.words += unfit_words;
    made.words += left_out;
    made.left_out = left_out;
    made.is_trouble = has_errors || !left_out.empty();
    return made;
}

engine::Result<std::optional<engine::Length>> ruler_read(const model::Project& project,
                                                         const std::string& text) {
    if (text.empty()) return std::optional<engine::Length>{};
    const auto length = engine::read_length(text, engine::bare_unit(project.shown));
    if (!length) return length.error();
    return std::optional<engine::Length>{*length};
}

// As the rulers measure that were typed.
engine::Result<model::PrinterScale> scale_of(const PaperWork& work) {
    const auto& project = *work.of->project;
    const auto across = ruler_read(project, work.across);
    if (!across) return across.error();
    const auto down = ruler_read(project, work.down);
    if (!down) return down.error();
    return model::printer_scale(project, *across, *down);
}

ToWrite nothing(std::string words) {
    ToWrite made;
    made.words = std::move(words);
    return made;
}

ToWrite no_strips(const std::string& refused) {
    auto made = nothing("Nothing is drilled that a strip could mark" + refused + ".");
    made.left_out = refused;
    made.is_trouble = true;
    return made;
}

}  // namespace

engine::Result<ToWrite> book_to_write(const PaperWork& work,
                                      const fs::path& file,
                                      const PaperGoOn& go_on) {
    const auto& of = *work.of;
    auto book = model::book_files(
        *of.project, *of.catalogue, of.resolved, *of.prices,
        {.supplier = {}, .paper = work.paper, .go_on = [&] { return go_on(0.0); }});
    if (!book) return book.error();
    if (!go_on(1.0)) return was_cancelled();
    ToWrite made;
    made.words = wrote_words(book->pages, file);
    made.is_trouble = book->has_errors;
    if (book->has_errors) made.words += unfit_words;
    made.files.push_back({.path = file, .bytes = std::move(book->pdf)});
    made.files.push_back({.path = model::stamps_beside(file), .bytes = std::move(book->stamps)});
    return made;
}

engine::Result<ToWrite> strips_to_write(const PaperWork& work,
                                        const fs::path& file,
                                        const PaperGoOn& go_on) {
    const auto& of = *work.of;
    const auto scale = scale_of(work);
    if (!scale) return scale.error();
    const auto strips = model::drill_strips(
        *of.project, *of.catalogue, of.resolved,
        {.paper = work.paper, .printer = *scale, .has_errors = work.has_errors});
    std::string refused;
    for (const auto& words : strips.refused) refused += ". " + words;
    if (strips.document.pages.empty()) return no_strips(refused);
    return as_file(strips.document, file, work.has_errors, refused, go_on);
}

engine::Result<ToWrite> changed_to_write(const model::BookStamps& printed,
                                         const PaperWork& work,
                                         const fs::path& file,
                                         const PaperGoOn& go_on) {
    const auto& of = *work.of;
    const auto marks = model::changed_marks(printed.marks, *of.project, *of.catalogue, of.resolved);
    const auto document = model::changed_pages(*of.project, *of.catalogue, of.resolved, marks,
                                               work.paper, work.has_errors);
    if (document.pages.empty()) return nothing("No drawing has changed.");
    return as_file(document, file, work.has_errors, {}, go_on);
}

}  // namespace editor
