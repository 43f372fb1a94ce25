#include "editor/assembly_memo.h"

namespace editor {

const AssemblyMemo& assembly_of(std::shared_ptr<AssemblyMemo>& memo,
                                const Derived& derived,
                                const model::Catalogue& catalogue) {
    if (memo && memo->of == derived.project) return *memo;
    memo = std::make_shared<AssemblyMemo>();
    memo->of = derived.project;
    memo->order = model::assembly_order(*derived.project, catalogue, derived.resolved);
    memo->approaches = model::approaches(memo->order, derived.resolved);
    const model::StepWording wording(*derived.project, catalogue, derived.resolved, memo->order);
    for (model::Index s = 0; s < memo->order.steps.size(); ++s) {
        memo->titles.push_back(wording.title_in_frame(s));
        memo->counts.push_back(wording.count(s));
    }
    return *memo;
}

const StepText& step_text_of(AssemblyMemo& memo,
                             const Derived& derived,
                             const model::Catalogue& catalogue,
                             std::size_t step) {
    if (memo.text && memo.text->step == step) return *memo.text;
    const model::StepWording wording(*derived.project, catalogue, derived.resolved, memo.order);
    const auto index = static_cast<model::Index>(step);
    memo.text = {step, wording.title(index), wording.lines(index), wording.joints(index)};
    return *memo.text;
}

}  // namespace editor
