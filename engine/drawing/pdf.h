// Documents as PDF files: 1 mm is 72/25.4 points, within 0.002 mm; fonts are embedded, texts can be
// searched.
#pragma once

#include "engine/drawing/document.h"
#include "engine/result.h"

#include <string>

namespace engine {

// The bytes of a PDF, the same for the same document. The date in it is that of SOURCE_DATE_EPOCH,
// where the environment sets it, else one that never changes. Errors: invalid_value for a document
// without pages, a page whose size or drawing no printer can do, and a bookmark to a page that is
// not there; out_of_range where memory runs out.
Result<std::string> pdf_bytes(const Document& document);

}  // namespace engine
