// Pages as SVG files, in millimetres and with texts that stay texts.
#pragma once

#include "engine/drawing/page.h"
#include "engine/result.h"

#include <string>
#include <string_view>

namespace engine {

// One page as SVG 1.1: printed at 100 %, a millimetre of it is one. Widths of texts are written
// into it, so that another font in their place is drawn as wide. Error: invalid_value as in
// pdf_bytes.
Result<std::string> svg_text(const Page& page, std::string_view title = {});

}  // namespace engine
