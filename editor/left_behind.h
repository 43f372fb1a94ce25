// Journals of edits that a program left behind when it ended without an answer of the user's.
#pragma once

#include "editor/desk.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace editor {

// Where the desk's journals are kept.
std::filesystem::path journal_folder(const std::filesystem::path& state_folder);

struct LeftBehind {
    std::filesystem::path journal;
    std::string words;  // what was edited, how much, when; or why it cannot be read
    std::optional<engine::ErrorCode> fault{};  // it cannot be read
};

// The newest first. Those of programs that still run are passed over, and what is no journal; those
// that hold nothing that is not in the file are taken away, or put aside where something in them
// cannot be read.
std::vector<LeftBehind> left_behind(const std::filesystem::path& folder);

// A question for each of them, the newest first; what is no sound journal is told, and put aside
// under another ending; what a later program can read, or this one another time, stays.
void ask_about_left_behind(Desk& desk);

void discard_journal(const std::filesystem::path& journal);

// Takes the edits of the journal onto the desk as one step behind what is in their file. The
// journal goes when the desk's own holds them; one that is not whole is kept under another ending.
// On an error a dialog says why and all stays.
void bring_back(Desk& desk, const std::filesystem::path& journal);

}  // namespace editor
