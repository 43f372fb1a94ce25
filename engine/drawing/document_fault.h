// Why no file can be made of pages.
#pragma once

#include "engine/drawing/document.h"
#include "engine/result.h"

#include <optional>

namespace engine {

// invalid_value. No value: any kind of file can hold it.
std::optional<Error> page_fault(const Page& page);
std::optional<Error> document_fault(const Document& document);

}  // namespace engine
