// Asks what is to become of edits that a crash left in no file.
#pragma once

#include <filesystem>
#include <string>

namespace editor {

struct RecoveryQuestion {
    std::filesystem::path journal;
    std::string words;  // sentences
};

enum class RecoveryAnswer { none, bring_back, discard, later };

RecoveryAnswer draw_recovery_question(const RecoveryQuestion& question);

}  // namespace editor
