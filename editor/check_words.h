// What the checks found, in a maker's words.
#pragma once

#include "editor/derived.h"
#include "editor/place.h"
#include "model/schedule/check_kind.h"

#include <string>

namespace editor {

const model::CheckCount& count_of(const Derived& derived, model::CheckKind kind);

// Why there is nothing to check: "no drawer"; empty where there is something.
std::string nothing_to_check(const Derived& derived, model::CheckKind kind);

// "3 to mend", "1 note", "nothing to mend", "no drawer".
std::string state_words(const Derived& derived, model::CheckKind kind);

// The place where its findings are mended.
Place place_of(model::CheckKind kind);

// Errors and warnings of all checks that are mended there.
int open_at(const Derived& derived, Place place);

// The kind that a finding is told under.
model::CheckKind kind_of(const model::Finding& finding);

}  // namespace editor
