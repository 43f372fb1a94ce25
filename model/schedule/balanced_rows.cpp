#include "model/schedule/balanced_rows.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

constexpr std::size_t least_on_last = 4;
constexpr std::size_t least_before = 2;

struct Drawn {
    std::size_t pages = 0;
    std::size_t on_last = 0;  // rows that begin there
};

// With a new page before the row `before`.
Drawn draw_all(PageFlow& flow, std::size_t count, std::size_t before, const DrawRow& draw) {
    Drawn drawn;
    for (std::size_t row = 0; row < count; ++row) {
        if (row == before) flow.new_page();
        const auto pages = flow.pages().size();
        draw(row, row == 0 || row == before);
        const bool is_next = row == before || flow.pages().size() != pages;
        drawn.on_last = is_next ? 1 : drawn.on_last + 1;
    }
    drawn.pages = flow.pages().size();
    return drawn;
}

// What would be drawn.
Drawn tried(PageFlow& flow, std::size_t count, std::size_t before, const DrawRow& draw) {
    PageFlow kept = flow.blank();
    std::swap(flow, kept);
    const auto drawn = draw_all(flow, count, before, draw);
    std::swap(flow, kept);
    return drawn;
}

// `count`: nowhere.
std::size_t break_before(PageFlow& flow, std::size_t count, const DrawRow& draw) {
    const auto plain = tried(flow, count, count, draw);
    if (plain.pages == 1 || plain.on_last >= least_on_last || count < least_on_last) return count;
    const auto before = std::max(count - least_on_last, least_before);
    return tried(flow, count, before, draw).pages > plain.pages ? count : before;
}

}  // namespace

void draw_balanced(PageFlow& flow, std::size_t count, const DrawRow& draw) {
    draw_all(flow, count, break_before(flow, count, draw), draw);
}

}  // namespace model
