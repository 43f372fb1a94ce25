// What was bought for a project goes with it to another name.
#pragma once

#include "engine/result.h"

namespace editor {

struct Desk;

// Where the project was saved under another name since: what was bought is written beside that one,
// and what lay there is put aside. A file that could not be read is taken along as it is. Errors:
// cannot_write, those of the file; then all is kept, to be tried again.
engine::Result<engine::Done> file_purchases(Desk& desk);

// Whether what was bought lies beside the project's file, where it has one.
bool are_purchases_filed(const Desk& desk);

// Whether it would be lost, were the project put away now.
bool has_purchases_in_no_file(const Desk& desk);

}  // namespace editor
