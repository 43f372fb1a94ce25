#include "model/book/strip_packing.h"

#include <algorithm>
#include <numeric>

namespace model {
namespace {

struct Row {
    std::size_t sheet = 0;
    double top = 0.0;
    double height = 0.0;
    double used = 0.0;  // of its width
};

}  // namespace

std::vector<PackedPlace> packed_in_rows(const std::vector<PackedSize>& sizes,
                                        const PackedSize& sheet,
                                        double gap) {
    std::vector<std::size_t> order(sizes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return sizes[a].height > sizes[b].height;
    });
    std::vector<PackedPlace> places(sizes.size());
    std::vector<Row> rows;
    std::vector<double> used;  // of the height of each sheet
    for (const std::size_t i : order) {
        const auto& [width, height] = sizes[i];
        auto row = std::find_if(rows.begin(), rows.end(), [&, wanted = width](const Row& it) {
            return it.used + gap + wanted <= sheet.width;
        });
        if (row == rows.end()) {
            const double needed = height;
            const auto at = std::find_if(used.begin(), used.end(), [&](double of_it) {
                return of_it + gap + needed <= sheet.height;
            });
            const auto on = static_cast<std::size_t>(at - used.begin());
            if (at == used.end()) used.push_back(-gap);
            rows.push_back({on, used[on] + gap, height, -gap});
            used[on] += gap + height;
            row = rows.end() - 1;
        }
        places[i] = {row->sheet, row->used + gap, row->top};
        row->used += gap + width;
    }
    return places;
}

}  // namespace model
