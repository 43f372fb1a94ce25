#include "engine/cutting/polish.h"

#include "engine/cutting/layouts.h"
#include "engine/cutting/offcut.h"

#include <algorithm>

namespace engine::cutting {

namespace {

constexpr std::int64_t offcut_steps = 25'000'000;
constexpr std::int64_t layout_steps = 40'000'000;

// The bar with the longest offcut stays as it is; the others may be cut in other ways.
Packing with_fewer_layouts_beside_offcut(const Task& task, const Packing& packing, Effort& effort) {
    const auto free = [&](const Filled& filled) {
        return task.bars[static_cast<std::size_t>(filled.pattern.bar)].capacity -
               weight(task, filled.pattern.parts);
    };
    const auto longest =
        std::max_element(packing.begin(), packing.end(),
                         [&](const Filled& a, const Filled& b) { return free(a) < free(b); });
    Task rest = task;
    Packing others = packing;
    Filled& kept = others[static_cast<std::size_t>(longest - packing.begin())];
    const Packing alone = take_off(rest, {kept.pattern, 1});
    --kept.times;
    std::erase_if(others, [](const Filled& filled) { return filled.times == 0; });
    Packing fewer = with_fewer_layouts(rest, others, layout_steps, effort);
    fewer.insert(fewer.end(), alone.begin(), alone.end());
    return merged(fewer);
}

}  // namespace

Packing polished(const Task& task, const Found& found, Effort& effort) {
    Task same = task;
    for (std::size_t b = 0; b < same.bars.size(); ++b) same.bars[b].supply = found.vector.counts[b];
    Packing packing = merged(in_items(task, *found.packing));
    packing = merged(with_longer_offcut(same, std::move(packing), offcut_steps, effort));
    Packing fewer = with_fewer_layouts_beside_offcut(same, packing, effort);
    if (fewer.size() < packing.size()) packing = std::move(fewer);
    return in_kinds(task, packing);
}

}  // namespace engine::cutting
