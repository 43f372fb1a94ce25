// The command that writes the shop book.
#pragma once

#include "editor/reports.h"

#include <string>

namespace CLI {
class App;
}

namespace editor {

// What `book` was given, as text.
struct BookArguments {
    std::string project;
    std::string file;
    std::string supplier;
    std::string paper;  // empty: letter where the project shows inches, else a4
    std::string since;  // stamps of an earlier book
};

void add_book(CLI::App& app, BookArguments& arguments);

ExitStatus run_book(const BookArguments& arguments, Streams streams);

}  // namespace editor
