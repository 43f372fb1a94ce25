#include "engine/cutting/simplex.h"

#include "engine/cutting/draw.h"

#include <algorithm>
#include <cmath>

namespace engine::cutting {

namespace {

constexpr double small_cost = 1e-9;
constexpr double small_pivot = 1e-8;
constexpr double off_by = 1e-7;
constexpr std::size_t most_candidates = 30;
constexpr std::size_t none = static_cast<std::size_t>(-1);

}  // namespace

// Right sides are moved a little, each by another amount, so that no two rows tie and the simplex
// does not stall: needs down and limits up, so that what can be met stays so.
Simplex::Simplex(std::span<const double> needs,
                 std::span<const double> limits,
                 std::span<const double> lack_costs)
    : needs_{needs.size()}, rows_{needs.size() + limits.size()} {
    Draw draw{1};
    const auto a_little = [&draw] {
        return 1e-6 * (1.0 + static_cast<double>(draw.below(1000)) / 250.0);
    };
    for (const double need : needs) right_.push_back(need > 0 ? need - a_little() : 0.0);
    for (const double limit : limits) right_.push_back(limit + a_little());
    add_own_columns(lack_costs);
    inverse_.assign(rows_ * rows_, 0.0);
    for (std::size_t r = 0; r < rows_; ++r) inverse_column(r)[r] = 1.0;
    level_ = right_;
    duals_.assign(rows_, 0.0);
    weighed_.assign(rows_, 0.0);
}

// All needs lack and all limits are free at first.
void Simplex::add_own_columns(std::span<const double> lack_costs) {
    for (std::size_t r = 0; r < needs_; ++r)
        columns_.push_back({lack_costs[r], {{static_cast<int>(r), 1.0}}});
    for (std::size_t r = 0; r < rows_; ++r)
        columns_.push_back({0.0, {{static_cast<int>(r), r < needs_ ? -1.0 : 1.0}}});
    is_basic_.assign(columns_.size(), 0);
    for (std::size_t r = 0; r < rows_; ++r) basis_.push_back(r < needs_ ? r : needs_ + r);
    for (const std::size_t column : basis_) is_basic_[column] = 1;
}

void Simplex::add_column(double cost, std::vector<Entry> entries) {
    columns_.push_back({cost, std::move(entries)});
    is_basic_.push_back(0);
}

void Simplex::raise_lack_costs(double times) {
    for (std::size_t r = 0; r < needs_; ++r) columns_[r].cost *= times;
}

double Simplex::objective() const {
    double sum = 0;
    for (std::size_t r = 0; r < rows_; ++r) sum += columns_[basis_[r]].cost * level_[r];
    return sum;
}

double Simplex::lack() const {
    double sum = 0;
    for (std::size_t r = 0; r < rows_; ++r) sum += basis_[r] < needs_ ? level_[r] : 0.0;
    return sum;
}

std::vector<double> Simplex::amounts() const {
    std::vector<double> amounts(columns(), 0.0);
    for (std::size_t r = 0; r < rows_; ++r) {
        if (basis_[r] >= own_columns()) amounts[basis_[r] - own_columns()] = level_[r];
    }
    return amounts;
}

void Simplex::minimise(Effort& effort) {
    compute_duals();
    bool is_checked = false;
    while (!effort.is_over()) {
        const std::size_t column = entering();
        if (column == none && (is_checked || is_accurate())) return;
        if (column == none) {
            refactor();
            effort.spend(static_cast<std::int64_t>(rows_ * rows_ * rows_ / 4));
            compute_duals();
            is_checked = true;
            continue;
        }
        weigh(columns_[column]);
        const std::size_t row = leaving();
        if (row == none) return;  // only rounding makes it so: costs are at least 0
        pivot(row, column);
        effort.spend(static_cast<std::int64_t>(rows_ * rows_ / 2 + columns_.size() + 600));
    }
}

double Simplex::cost_less_duals(std::size_t column) const {
    double sum = columns_[column].cost;
    for (const auto& [row, coefficient] : columns_[column].entries)
        sum -= coefficient * duals_[static_cast<std::size_t>(row)];
    return sum;
}

// Of a short list, as long as it has any: looking at all columns each time takes longer than
// pivots.
std::size_t Simplex::entering() {
    const std::size_t listed = cheapest_candidate();
    if (listed != none) return listed;
    list_candidates();
    return cheapest_candidate();
}

std::size_t Simplex::cheapest_candidate() const {
    double least = -small_cost;
    std::size_t best = none;
    for (const std::size_t c : candidates_) {
        if (is_basic_[c]) continue;
        const double cost = cost_less_duals(c);
        if (cost >= least) continue;
        least = cost;
        best = c;
    }
    return best;
}

void Simplex::list_candidates() {
    std::vector<std::pair<double, std::size_t>> found;
    for (std::size_t c = needs_; c < columns_.size(); ++c) {
        const double cost = is_basic_[c] ? 0.0 : cost_less_duals(c);
        if (cost < -small_cost) found.emplace_back(cost, c);
    }
    const auto end =
        found.begin() + static_cast<std::ptrdiff_t>(std::min(most_candidates, found.size()));
    std::partial_sort(found.begin(), end, found.end());
    candidates_.clear();
    for (auto at = found.begin(); at != end; ++at) candidates_.push_back(at->second);
}

void Simplex::weigh(const Column& column) {
    std::fill(weighed_.begin(), weighed_.end(), 0.0);
    for (const auto& [row, coefficient] : column.entries) {
        const double* from = inverse_column(static_cast<std::size_t>(row));
        for (std::size_t r = 0; r < rows_; ++r) weighed_[r] += coefficient * from[r];
    }
}

// Of rows that tie, the one with the largest pivot.
std::size_t Simplex::leaving() const {
    std::size_t best = none;
    double least = 0;
    for (std::size_t r = 0; r < rows_; ++r) {
        if (weighed_[r] <= small_pivot) continue;
        const double ratio = std::max(level_[r], 0.0) / weighed_[r];
        const bool is_tie = best != none && std::abs(ratio - least) < 1e-12;
        if (best != none && !is_tie && ratio > least) continue;
        if (is_tie && weighed_[r] <= weighed_[best]) continue;
        best = r;
        least = ratio;
    }
    return best;
}

void Simplex::pivot(std::size_t row, std::size_t column) {
    const double at = weighed_[row];
    const double step = std::max(level_[row], 0.0) / at;
    const double dual_step = cost_less_duals(column) / at;
    for (std::size_t r = 0; r < rows_; ++r) level_[r] -= step * weighed_[r];
    level_[row] = step;
    for (std::size_t c = 0; c < rows_; ++c) {
        double* of = inverse_column(c);
        if (of[row] == 0.0) continue;
        const double part = of[row] / at;
        duals_[c] += dual_step * of[row];
        for (std::size_t r = 0; r < rows_; ++r) of[r] -= part * weighed_[r];
        of[row] = part;
    }
    is_basic_[basis_[row]] = 0;
    is_basic_[column] = 1;
    basis_[row] = column;
}

void Simplex::compute_duals() {
    for (std::size_t c = 0; c < rows_; ++c) {
        const double* of = inverse_column(c);
        double sum = 0;
        for (std::size_t r = 0; r < rows_; ++r) sum += columns_[basis_[r]].cost * of[r];
        duals_[c] = sum;
    }
}

bool Simplex::is_accurate() const {
    std::vector<double> rest = right_;
    for (std::size_t r = 0; r < rows_; ++r) {
        for (const auto& [row, coefficient] : columns_[basis_[r]].entries)
            rest[static_cast<std::size_t>(row)] -= coefficient * level_[r];
        if (std::abs(cost_less_duals(basis_[r])) > off_by) return false;
    }
    return std::all_of(rest.begin(), rest.end(), [](double d) { return std::abs(d) < off_by; });
}

}  // namespace engine::cutting
