// Files that take a while to work out are made beside the window, with their progress. None is
// written before all of them are there, nor where that is cancelled.
#pragma once

#include "editor/background_work.h"
#include "engine/result.h"

#include <filesystem>
#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace editor {

struct Desk;

struct NewFile {
    std::filesystem::path path;
    std::string bytes;
    bool keeps_old = false;  // may be filled in by hand: one that is there stays
};

struct ToWrite {
    std::vector<NewFile> files;
    std::vector<std::filesystem::path> gone;  // of an earlier time, and made no more
    std::string words;                        // what there is to say once they are written
    std::string left_out;                     // the part of the words that tells what was
    bool is_trouble = false;                  // so that it is told in red
};

using WriteWork = BackgroundWork<ToWrite>::Work;

// What is done with it, in the window's thread.
using TakeWritten = std::function<void(Desk&, const engine::Result<ToWrite>&)>;

struct WriteRun {
    WriteRun(std::string title_, TakeWritten take_, WriteWork does, std::function<void()> wake)
        : title{std::move(title_)},
          take{std::move(take_)},
          work{std::move(does), std::move(wake)} {}

    std::string title;  // "Writing the shop book"
    TakeWritten take;
    bool is_cancelled = false;
    BackgroundWork<ToWrite> work;
};

// Begins it, under a dialog that closes by itself; where the desk has nobody to work beside it
// (Desk::bands), it is done at once.
void begin_writing(Desk& desk, std::string title, WriteWork work, TakeWritten take);

// What work gives that was told to stop.
engine::Error was_cancelled();

// A part of the work, from one share of the whole to another.
BackgroundWork<ToWrite>::GoOn part_of(const BackgroundWork<ToWrite>::GoOn& go_on,
                                      double from,
                                      double to);

// Each file whole or not at all, in folders that are made where they are missing, up to the first
// that cannot be. Error: cannot_write, with that one, and how many were written before it.
engine::Result<engine::Done> write_all(const ToWrite& made);

}  // namespace editor
