// Short stamps of what is drawn, by which a printed page can tell later whether it is still true.
#pragma once

#include "engine/result.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <string>
#include <string_view>
#include <vector>

namespace model {

// "K3F-7Q2": six signs of the 32 that are hard to misread (no I, L, O, U), 30 bits of a hash that
// is the same with every compiler and on every machine.
std::string stamp_of(std::string_view bytes);

// Of the project as its file states it. A later edit that is taken back gives the old stamp again.
std::string project_stamp(const Project& project);

// Of all that the pages of the mark print, for both hands: how many, from what, length, ends,
// outline and cut-outs, frames and members, and each hole with its drill, operation, fastener and
// mates, in the unit that is shown. Not the mark's own name: a page with that drawing stays true
// while the stamp does.
std::string mark_stamp(const Project& project,
                       const Catalogue& catalogue,
                       const Resolved& resolved,
                       Index mark);

struct MarkStamp {
    std::string mark;
    std::string stamp;

    bool operator==(const MarkStamp&) const = default;
};

// How stamps are made: one more whenever what goes into a stamp, or its order, is changed. A file
// without it is of the first way.
inline constexpr int stamp_making = 2;

// What a printed book says of itself.
struct BookStamps {
    std::string project;  // its name
    std::string stamp;    // project_stamp
    std::vector<MarkStamp> marks;

    bool operator==(const BookStamps&) const = default;
};

BookStamps book_stamps(const Project& project,
                       const Catalogue& catalogue,
                       const Resolved& resolved);

// Marks that are drawn otherwise now than when these stamps were printed, and new ones, in order.
std::vector<Index> changed_marks(const std::vector<MarkStamp>& printed,
                                 const Project& project,
                                 const Catalogue& catalogue,
                                 const Resolved& resolved);

// Marks that were printed and are no more.
std::vector<std::string> marks_gone(const std::vector<MarkStamp>& printed,
                                    const Resolved& resolved);

// The stamps as a file beside the book, JSON, a line for each mark.
std::string stamps_text(const BookStamps& stamps);

// Error: bad_file with what is wrong; also for a file whose stamps are made otherwise than this
// program makes them, since all of them would differ though nothing was edited.
engine::Result<BookStamps> read_stamps(std::string_view text);

}  // namespace model
