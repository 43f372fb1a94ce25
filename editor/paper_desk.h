// What is printed: the shop book, drill strips, and the drawings of marks that have changed since.
#pragma once

#include "editor/derived.h"
#include "editor/paper_work.h"
#include "engine/drawing/paper.h"
#include "model/book/stamp.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace editor {

struct Desk;

enum class PaperWish { none, book, strips, changed };

struct PaperDesk {
    std::optional<engine::Paper> paper;  // none: by the project's unit
    std::string across;                  // what the ruler measures on a printed sheet, as typed
    std::string down;
    PaperWish wish = PaperWish::none;  // to be done before the next frame
    std::string said;                  // what was written last, or why nothing was
    bool is_trouble = false;
    std::filesystem::path of_file;             // of the project: whose book was looked for
    std::optional<model::BookStamps> printed;  // of the book beside it; none: there is none
    std::string stamps_trouble;                // why its stamps cannot be read
    Snapshot of;                               // what `changed` was worked out of
    std::vector<std::string> changed;          // marks whose drawing is another now
    std::vector<std::string> gone;
};

// Letter for a project in inches, else A4, unless another one was chosen.
engine::Paper paper_of(const PaperDesk& papers, const model::Project& project);

// "counter.book.pdf" beside "counter.json"; strips and changed marks likewise.
std::filesystem::path book_beside(const std::filesystem::path& project_file);
std::filesystem::path strips_beside(const std::filesystem::path& project_file);
std::filesystem::path changed_beside(const std::filesystem::path& project_file);

// Once in each frame in which it is shown: does what was wished, and tells what has changed since
// the book was written.
void tend_paper(Desk& desk);

// The paper that is chosen, and what its rulers measure.
PaperWork paper_work(const Desk& desk, const Derived& now);

}  // namespace editor
