#include "editor/paper_desk.h"

#include "editor/desk.h"
#include "editor/paper_names.h"
#include "engine/drawing/pdf.h"
#include "engine/files/whole_file.h"
#include "engine/measure/tape.h"
#include "model/book/book_files.h"
#include "model/book/changed_pages.h"
#include "model/book/drill_strips.h"

#include <system_error>
#include <utility>

namespace editor {
namespace {

namespace fs = std::filesystem;

fs::path beside(const fs::path& project_file, const char* what) {
    auto file = project_file;
    file.replace_extension();
    file += what;
    return file;
}

void say(PaperDesk& papers, std::string words, bool is_trouble) {
    papers.said = std::move(words);
    papers.is_trouble = is_trouble;
}

void say_error(PaperDesk& papers, const engine::Error& error) {
    say(papers, "Nothing was written: " + engine::to_text(error), true);
}

std::string count_of_pages(std::size_t pages) {
    return std::to_string(pages) + (pages == 1 ? " page" : " pages");
}

void write_document(PaperDesk& papers, const engine::Document& document, const fs::path& file) {
    const auto bytes = engine::pdf_bytes(document);
    if (!bytes) return say_error(papers, bytes.error());
    const auto written = engine::write_whole_file(file, *bytes);
    if (!written) return say_error(papers, written.error());
    say(papers, "Wrote " + count_of_pages(document.pages.size()) + " into " + file.string(), false);
}

void write_the_book(Desk& desk, PaperDesk& papers) {
    const auto& now = derived(desk);
    const auto files =
        model::book_files(*now.project, *desk.catalogue, now.resolved, *desk.prices.library,
                          {.supplier = {}, .paper = paper_of(papers, *now.project), .go_on = {}});
    if (!files) return say_error(papers, files.error());
    const auto file = book_beside(desk.file);
    const auto written = model::write_book(*files, file);
    if (!written) return say_error(papers, written.error());
    std::string words = "Wrote " + count_of_pages(files->pages) + " into " + file.string();
    if (files->has_errors) words += ", not fit to work from: mend the errors first";
    say(papers, words, files->has_errors);
    papers.of_file.clear();  // its stamps are others now
}

engine::Result<std::optional<engine::Length>> ruler_read(const model::Project& project,
                                                         const std::string& text) {
    if (text.empty()) return std::optional<engine::Length>{};
    const auto length = engine::read_length(text, engine::bare_unit(project.shown));
    if (!length) return length.error();
    return std::optional<engine::Length>{*length};
}

// As the rulers measure that were typed.
engine::Result<model::PrinterScale> scale_of(const PaperDesk& papers,
                                             const model::Project& project) {
    const auto across = ruler_read(project, papers.across);
    if (!across) return across.error();
    const auto down = ruler_read(project, papers.down);
    if (!down) return down.error();
    return model::printer_scale(project, *across, *down);
}

// Adds to what was said of a file that was written.
void tell_unfit(PaperDesk& papers, const Derived& now, const std::string& more) {
    if (papers.is_trouble) return;
    if (now.summary.errors > 0) papers.said += ", not fit to work from: mend the errors first";
    papers.said += more;
    papers.is_trouble = now.summary.errors > 0 || !more.empty();
}

void write_the_strips(Desk& desk, PaperDesk& papers) {
    const auto& now = derived(desk);
    const auto scale = scale_of(papers, *now.project);
    if (!scale) return say_error(papers, scale.error());
    const auto strips = model::drill_strips(*now.project, *desk.catalogue, now.resolved,
                                            {.paper = paper_of(papers, *now.project),
                                             .printer = *scale,
                                             .has_errors = now.summary.errors > 0});
    std::string refused;
    for (const auto& words : strips.refused) refused += ". " + words;
    if (strips.document.pages.empty()) {
        return say(papers, "Nothing is drilled that a strip could mark" + refused + ".", true);
    }
    write_document(papers, strips.document, strips_beside(desk.file));
    tell_unfit(papers, now, refused);
}

void write_the_changed(Desk& desk, PaperDesk& papers) {
    const auto& now = derived(desk);
    if (!papers.printed) return;
    const auto marks =
        model::changed_marks(papers.printed->marks, *now.project, *desk.catalogue, now.resolved);
    const auto document =
        model::changed_pages(*now.project, *desk.catalogue, now.resolved, marks,
                             paper_of(papers, *now.project), now.summary.errors > 0);
    if (document.pages.empty()) return say(papers, "No drawing has changed.", false);
    write_document(papers, document, changed_beside(desk.file));
    tell_unfit(papers, now, {});
}

void do_what_is_wished(Desk& desk, PaperDesk& papers) {
    const auto wish = std::exchange(papers.wish, PaperWish::none);
    if (wish == PaperWish::none) return;
    if (desk.file.empty()) {
        return say(papers, "Save the project first: what is printed lies beside it.", true);
    }
    if (wish == PaperWish::book) write_the_book(desk, papers);
    if (wish == PaperWish::strips) write_the_strips(desk, papers);
    if (wish == PaperWish::changed) write_the_changed(desk, papers);
}

void look_for_book(PaperDesk& papers, const fs::path& project_file) {
    papers.of_file = project_file;
    papers.printed.reset();
    papers.stamps_trouble.clear();
    papers.of.reset();
    const auto file = model::stamps_beside(book_beside(project_file));
    std::error_code unseen;
    if (project_file.empty() || !fs::exists(file, unseen)) return;
    const auto text = engine::read_whole_file(file);
    if (!text) {
        papers.stamps_trouble = engine::to_text(text.error());
        return;
    }
    auto stamps = model::read_stamps(*text);
    if (stamps) {
        papers.printed = std::move(stamps).value();
    } else {
        papers.stamps_trouble = file.filename().string() + ": " + engine::to_text(stamps.error());
    }
}

void tell_changes(Desk& desk, PaperDesk& papers) {
    const auto& now = derived(desk);
    if (papers.of == now.project || !papers.printed) return;
    papers.of = now.project;
    papers.changed.clear();
    for (const auto mark :
         model::changed_marks(papers.printed->marks, *now.project, *desk.catalogue, now.resolved)) {
        papers.changed.push_back(now.resolved.marks[mark].name);
    }
    papers.gone = model::marks_gone(papers.printed->marks, now.resolved);
}

}  // namespace

engine::Paper paper_of(const PaperDesk& papers, const model::Project& project) {
    return papers.paper ? *papers.paper : paper_for(project);
}

fs::path book_beside(const fs::path& project_file) { return beside(project_file, ".book.pdf"); }
fs::path strips_beside(const fs::path& project_file) { return beside(project_file, ".strips.pdf"); }
fs::path changed_beside(const fs::path& project_file) {
    return beside(project_file, ".changed.pdf");
}

std::string printed_words(Desk& desk, const fs::path& folder) {
    const PaperDesk none;
    const auto& papers = desk.ui.make.paper ? *desk.ui.make.paper : none;
    const auto& now = derived(desk);
    const auto paper = paper_of(papers, *now.project);
    const auto book =
        model::book_files(*now.project, *desk.catalogue, now.resolved, *desk.prices.library,
                          {.supplier = {}, .paper = paper, .go_on = {}});
    if (!book) return "; no shop book: " + engine::to_text(book.error());
    if (const auto done = model::write_book(*book, folder / "book.pdf"); !done)
        return "; no shop book: " + engine::to_text(done.error());
    const auto scale = scale_of(papers, *now.project);
    if (!scale) return ", and the shop book; no drill strips: " + engine::to_text(scale.error());
    const auto strips = model::drill_strips(
        *now.project, *desk.catalogue, now.resolved,
        {.paper = paper, .printer = *scale, .has_errors = now.summary.errors > 0});
    if (strips.document.pages.empty()) return ", and the shop book";
    const auto bytes = engine::pdf_bytes(strips.document);
    const auto done = bytes ? engine::write_whole_file(folder / "strips.pdf", *bytes)
                            : engine::Result<engine::Done>{bytes.error()};
    if (!done) return ", and the shop book; no drill strips: " + engine::to_text(done.error());
    std::string words = ", the shop book and the drill strips";
    for (const auto& refused : strips.refused) words += "; " + refused;
    return words;
}

void tend_paper(Desk& desk) {
    auto& papers = desk.ui.make.paper;
    if (!papers) papers = std::make_shared<PaperDesk>();
    do_what_is_wished(desk, *papers);
    if (papers->of_file != desk.file) look_for_book(*papers, desk.file);
    tell_changes(desk, *papers);
}

}  // namespace editor
