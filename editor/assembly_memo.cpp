#include "editor/assembly_memo.h"

namespace editor {
namespace {

std::vector<std::size_t> numbers_of(const model::AssemblyOrder& order, std::size_t frames) {
    std::vector<std::size_t> numbers;
    std::vector<std::size_t> last(frames, 0);
    for (const auto& step : order.steps) {
        numbers.push_back(step.frame < frames ? ++last[step.frame] : 0);
    }
    return numbers;
}

}  // namespace

const AssemblyMemo& assembly_of(std::shared_ptr<AssemblyMemo>& memo,
                                const Derived& derived,
                                const model::Catalogue& catalogue) {
    if (memo && memo->of == derived.project) return *memo;
    memo = std::make_shared<AssemblyMemo>();
    memo->of = derived.project;
    memo->order = model::assembly_order(*derived.project, catalogue, derived.resolved);
    memo->approaches = model::approaches(memo->order, derived.resolved);
    memo->numbers = numbers_of(memo->order, derived.resolved.frames.size());
    return *memo;
}

}  // namespace editor
