#include "editor/book_command.h"

#include "editor/open_project.h"
#include "editor/paper_names.h"
#include "engine/drawing/pdf.h"
#include "engine/files/whole_file.h"
#include "model/book/book_files.h"
#include "model/book/changed_pages.h"
#include "model/room/read_scan.h"
#include "model/room/resolve_in_room.h"

#include <CLI/CLI.hpp>

#include <filesystem>
#include <ostream>

namespace editor {
namespace {

// All that a book is made of.
struct Read {
    model::Project project;
    model::Catalogue catalogue;
    model::Resolved resolved;
    model::PriceLibrary library;
};

engine::Result<Read> read_all(const std::filesystem::path& file) {
    auto project = open_project(file);
    if (!project) return project.error();
    auto catalogue = open_catalogue();
    if (!catalogue) return catalogue.error();
    Read read{std::move(project).value(), std::move(catalogue).value(), {}, {}};
    read.resolved = model::resolve_in_room(read.project, read.catalogue,
                                           model::read_scans(read.project, file.parent_path()));
    read.library = model::read_price_library(read.project, read.catalogue, file);
    return read;
}

engine::Result<model::BookStamps> read_since(const std::filesystem::path& file) {
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
                   const Read& read,
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

// The drawings of changed marks; a book and its stamps are left as they are.
ExitStatus write_changed(const BookArguments& arguments,
                         const model::BookStamps& since,
                         const Read& read,
                         Streams streams) {
    const auto changed =
        model::changed_marks(since.marks, read.project, read.catalogue, read.resolved);
    print_changes(since, changed, read, streams.out);
    const auto document = model::changed_pages(read.project, read.catalogue, read.resolved, changed,
                                               paper_for(read.project, arguments.paper));
    if (document.pages.empty()) {
        streams.out << "no drawing is to be printed anew, so nothing is written\n";
        return ExitStatus::fine;
    }
    const auto bytes = engine::pdf_bytes(document);
    if (!bytes) return failed(bytes.error(), streams.err);
    if (const auto written = engine::write_whole_file(arguments.file, *bytes); !written)
        return failed(written.error(), streams.err);
    streams.out << "the changed drawings alone are written to " << arguments.file << ": "
                << document.pages.size() << (document.pages.size() == 1 ? " page\n" : " pages\n");
    return ExitStatus::fine;
}

ExitStatus run_book(const BookArguments& arguments, Streams streams) {
    std::optional<model::BookStamps> since;
    if (!arguments.since.empty()) {
        auto stamps = read_since(arguments.since);
        if (!stamps) return failed(stamps.error(), streams.err);
        since = std::move(stamps).value();
    }
    const auto read = read_all(arguments.project);
    if (!read) return failed(read.error(), streams.err);
    if (since) return write_changed(arguments, *since, *read, streams);
    const auto files = model::book_files(
        read->project, read->catalogue, read->resolved, read->library,
        {.supplier = arguments.supplier, .paper = paper_for(read->project, arguments.paper)});
    if (!files) return failed(files.error(), streams.err);
    if (const auto written = model::write_book(*files, arguments.file); !written)
        return failed(written.error(), streams.err);
    for (const auto& line : files->words) streams.out << line << "\n";
    streams.out << "written to " << arguments.file << ": " << files->pages
                << " pages; its stamps to " << model::stamps_beside(arguments.file).string()
                << "\n";
    if (!files->has_errors) return ExitStatus::fine;
    streams.err << "barwright: the book is written, but the project is not fit to cut from: see "
                   "its cover\n";
    return ExitStatus::has_errors;
}

}  // namespace editor
