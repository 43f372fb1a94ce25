// A linear programme to which columns are added while it is solved: the least cost of columns of
// which some rows need at least, others allow at most so much. Primal simplex on a dense inverse
// that lives on between calls. Doubles: what it says guides the search and proves nothing.
//
// Own code, not a library: see column_bound.h.
#pragma once

#include "engine/cutting/effort.h"

#include <cstddef>
#include <span>
#include <utility>
#include <vector>

namespace engine::cutting {

class Simplex {
public:
    using Entry = std::pair<int, double>;  // row, coefficient

    // Rows 0 .. needs.size() - 1 need at least so much, and one that lacks costs its `lack_costs`;
    // the following rows allow at most so much.
    Simplex(std::span<const double> needs,
            std::span<const double> limits,
            std::span<const double> lack_costs);

    void add_column(double cost, std::vector<Entry> entries);
    void raise_lack_costs(double times);
    void minimise(Effort& effort);

    std::size_t columns() const { return columns_.size() - own_columns(); }
    double dual(std::size_t row) const { return duals_[row]; }
    double objective() const;
    double lack() const;                  // how much of the needs is not met
    std::vector<double> amounts() const;  // of the added columns
    double reduced_cost(std::size_t column) const {
        return cost_less_duals(own_columns() + column);
    }

private:
    struct Column {
        double cost = 0;
        std::vector<Entry> entries;
    };

    // Before the added ones: what lacks of each need, what there is too much of it, what is free of
    // each limit.
    std::size_t own_columns() const { return needs_ + rows_; }
    void add_own_columns(std::span<const double> lack_costs);
    double* inverse_column(std::size_t row) { return inverse_.data() + row * rows_; }
    double cost_less_duals(std::size_t column) const;
    std::size_t entering();
    std::size_t cheapest_candidate() const;
    void list_candidates();
    void weigh(const Column& column);
    std::size_t leaving() const;
    void pivot(std::size_t row, std::size_t column);
    void compute_duals();
    void refactor();
    void fill_basis_matrix(std::vector<double>& matrix) const;
    bool is_accurate() const;

    std::size_t needs_;
    std::size_t rows_;
    std::vector<double> right_;
    std::vector<Column> columns_;
    std::vector<std::size_t> basis_;  // column of each row's basic variable
    std::vector<char> is_basic_;
    std::vector<double> inverse_;  // by columns
    std::vector<double> level_;    // of the basic variables
    std::vector<double> duals_;
    std::vector<std::size_t>
        candidates_;               // columns that would lower the cost when they were listed
    std::vector<double> weighed_;  // the entering column in terms of the basis
};

}  // namespace engine::cutting
