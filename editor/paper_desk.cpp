#include "editor/paper_desk.h"

#include "editor/desk.h"
#include "editor/paper_names.h"
#include "engine/files/whole_file.h"
#include "model/book/book_files.h"
#include "model/book/changed_pages.h"

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

PaperWork work_of(const Desk& desk, const PaperDesk& papers, const Derived& now) {
    return {.of = project_copy(desk, now),
            .paper = paper_of(papers, *now.project),
            .across = papers.across,
            .down = papers.down,
            .has_errors = now.summary.errors > 0};
}

void take_written(Desk& desk, const engine::Result<ToWrite>& made) {
    auto& papers = *desk.ui.make.paper;
    const auto written = made ? write_all(*made) : engine::Result<engine::Done>{made.error()};
    papers.of_file.clear();  // the stamps of its book may be others now
    if (!written) return say(papers, "Not written: " + engine::to_text(written.error()), true);
    say(papers, made->words, made->is_trouble);
}

void begin(Desk& desk, const PaperDesk& papers, PaperWish wish) {
    const auto work = work_of(desk, papers, derived(desk));
    const auto run = [&](const char* title, const fs::path& file, const auto& to_write) {
        begin_writing(
            desk, title, [=](const PaperGoOn& go_on) { return to_write(work, file, go_on); },
            take_written);
    };
    if (wish == PaperWish::book) {
        run("Writing the shop book", book_beside(desk.file), book_to_write);
    } else if (wish == PaperWish::strips) {
        run("Writing the drill strips", strips_beside(desk.file), strips_to_write);
    } else if (papers.printed) {
        run("Writing what has changed", changed_beside(desk.file),
            [printed = *papers.printed](const auto&... given) {
                return changed_to_write(printed, given...);
            });
    }
}

void do_what_is_wished(Desk& desk, PaperDesk& papers) {
    const auto wish = std::exchange(papers.wish, PaperWish::none);
    if (wish == PaperWish::none) return;
    if (desk.file.empty()) {
        return say(papers, "Save the project first: what is printed lies beside it.", true);
    }
    begin(desk, papers, wish);
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

PaperWork paper_work(const Desk& desk, const Derived& now) {
    const PaperDesk none;
    return work_of(desk, desk.ui.make.paper ? *desk.ui.make.paper : none, now);
}

void tend_paper(Desk& desk) {
    auto& papers = desk.ui.make.paper;
    if (!papers) papers = std::make_shared<PaperDesk>();
    do_what_is_wished(desk, *papers);
    if (papers->of_file != desk.file) look_for_book(*papers, desk.file);
    tell_changes(desk, *papers);
}

}  // namespace editor
