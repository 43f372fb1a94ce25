// The bays of the copies, with what lies in them: see the edit RepeatBay.
#pragma once

#include "model/project/repeat_bars.h"

namespace model {

// Adds them to the frame, with panels and loads of the bay as the edit says.
void copy_bay(Frame& frame, const Repeated& repeated, const RepeatBay& edit);

}  // namespace model
