#include "editor/book_command.h"

#include "editor/paper_names.h"
#include "editor/worked_out_file.h"
#include "engine/files/whole_file.h"
#include "model/book/book_files.h"

#include <CLI/CLI.hpp>

#include <filesystem>
#include <optional>
#include <ostream>
#include <system_error>
#include <utility>

namespace editor {
namespace {

namespace fs = std::filesystem;

engine::Result<model::BookStamps> read_since(const fs::path& file) {
    const auto text = engine::read_whole_file(file);
    if (!text) return text.error();
    auto stamps = model::read_stamps(*text);
    if (stamps) return stamps;
    auto error = stamps.error();
    error.where = file.string() + (error.where.empty() ? "" : ", " + error.where);
    return error;
}

void print_changes(const model::BookStamps& since,
                   const std::vector<model::Index>& changed,
                   const WorkedOutFile& read,
                   std::ostream& out) {
    const auto gone = model::marks_gone(since.marks, read.resolved);
    if (changed.empty() && gone.empty()) {
        out << "all marks are still as they were printed\n";
        return;
    }
    for (const auto mark : changed)
        out << read.resolved.marks[mark].name << " is drawn otherwise now\n";
    for (const auto& mark : gone) out << mark << " is no more\n";
}

ExitStatus failed(const engine::Error& error, std::ostream& err) {
    err << "barwright: " << engine::to_text(error) << "\n";
    return ExitStatus::not_possible;
}

// Some of its pages would take the place of the book that was printed, and which the stamps are of.
std::optional<engine::Error> overwriting(const BookArguments& arguments) {
    const auto is_since = [&](const fs::path& file) {
        std::error_code unseen;
        return fs::weakly_canonical(file, unseen) == fs::weakly_canonical(arguments.since, unseen);
    };
    const bool is_refused =
        is_since(arguments.file) || is_since(model::stamps_beside(arguments.file));
    if (!is_refused) return std::nullopt;
    return engine::Error{engine::ErrorCode::invalid_value, "--out " + arguments.file,
                         "this is the book that the stamps in " + arguments.since +
                             " belong to; it would be overwritten by some of its pages: give "
                             "--out another name, such as changed.pdf"};
}

model::BookWish wish_of(const BookArguments& arguments, const WorkedOutFile& read) {
    return {.supplier = arguments.supplier,
            .paper = paper_for(read.project, arguments.paper),
            .go_on = {}};
}

ExitStatus fit_or_not(bool has_errors, const char* where, std::ostream& err) {
    if (!has_errors) return ExitStatus::fine;
    err << "barwright: the project is not fit to cut from: " << where << "\n";
    return ExitStatus::has_errors;
}

// The drawings of changed marks; a book and its stamps are left as they are.
ExitStatus write_changed(const BookArguments& arguments,
                         const model::BookStamps& since,
                         const WorkedOutFile& read,
                         Streams streams) {
    const auto changed = model::changed_book(read.project, read.catalogue, read.resolved,
                                             read.prices, since, wish_of(arguments, read));
    if (!changed) return failed(changed.error(), streams.err);
    print_changes(since, changed->marks, read, streams.out);
    if (changed->pages == 0) {
        streams.out << "no drawing is to be printed anew, so nothing is written\n";
    } else {
        if (const auto written = engine::write_whole_file(arguments.file, changed->pdf); !written)
            return failed(written.error(), streams.err);
        streams.out << "the changed drawings alone are written to " << arguments.file << ": "
                    << changed->pages << (changed->pages == 1 ? " page\n" : " pages\n");
    }
    return fit_or_not(changed->has_errors, "run `barwright check` and mend the errors first",
                      streams.err);
}

ExitStatus write_all_of_it(const BookArguments& arguments,
                           const WorkedOutFile& read,
                           Streams streams) {
    const auto files = model::book_files(read.project, read.catalogue, read.resolved, read.prices,
                                         wish_of(arguments, read));
    if (!files) return failed(files.error(), streams.err);
    if (const auto written = model::write_book(*files, arguments.file); !written)
        return failed(written.error(), streams.err);
    for (const auto& line : files->words) streams.out << line << "\n";
    streams.out << "written to " << arguments.file << ": " << files->pages
                << " pages; its stamps to " << model::stamps_beside(arguments.file).string()
                << "\n";
    return fit_or_not(files->has_errors, "the book is written, see its cover", streams.err);
}

}  // namespace

void add_book(CLI::App& app, BookArguments& arguments) {
    auto* book = app.add_subcommand("book", "Write the shop book as a PDF to print");
    book->add_option("PROJECT", arguments.project, "The project's file")
        ->type_name("FILE")
        ->required();
    book->add_option("--out", arguments.file, "The PDF file to write")
        ->type_name("FILE")
        ->required();
    book->add_option("--paper", arguments.paper, "What it is printed on")
        ->check(CLI::IsMember(paper_names(), CLI::ignore_case));
    book->add_option("--supplier", arguments.supplier,
                     "Buy from this one, as it is named in the project")
        ->type_name("NAME");
    book->add_option(
            "--since", arguments.since,
            "The stamps of an earlier book: say which of its marks are drawn otherwise now, "
            "and write their drawings alone")
        ->type_name("FILE");
}

ExitStatus run_book(const BookArguments& arguments, Streams streams) {
    std::optional<model::BookStamps> since;
    if (!arguments.since.empty()) {
        if (const auto refused = overwriting(arguments)) return failed(*refused, streams.err);
        auto stamps = read_since(arguments.since);
        if (!stamps) return failed(stamps.error(), streams.err);
        since = std::move(stamps).value();
    }
    const auto read = worked_out_file(arguments.project);
    if (!read) return failed(read.error(), streams.err);
    return since ? write_changed(arguments, *since, *read, streams)
                 : write_all_of_it(arguments, *read, streams);
}

}  // namespace editor
