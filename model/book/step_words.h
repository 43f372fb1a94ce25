// What is done in a step of the assembly, in words.
#pragma once

#include "model/assembly/assembly_order.h"
#include "model/book/book_chapters.h"

#include <string>
#include <vector>

namespace model {

// A line for each thing to do, in order, to be ticked when it is done. `numbers` are those by which
// the steps are called, by AssemblyOrder::steps.
std::vector<std::string> step_words(const BookOf& of,
                                    const AssemblyOrder& order,
                                    const AssemblyStep& step,
                                    const std::vector<int>& numbers);

}  // namespace model
