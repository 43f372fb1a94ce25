#include "model/buying/paid_sheets.h"

#include "model/buying/list_lengths.h"

namespace model {

std::vector<PaidSheet> paid_sheets(const std::vector<Purchase>& paid) {
    std::vector<PaidSheet> sheets;
    for (const auto& purchase : paid) {
        for (const auto& line : purchase.lines) {
            if (line.kind != BuyKind::sheet) continue;
            const auto size = read_sheet_size(line.size, engine::LengthUnit::millimetre, ',');
            if (size) sheets.push_back({line.what, *size, line.count});
        }
    }
    return sheets;
}

}  // namespace model
