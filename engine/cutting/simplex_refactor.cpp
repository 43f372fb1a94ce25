// The inverse of the basis anew, when rounding has worn it.
#include "engine/cutting/simplex.h"

#include <algorithm>
#include <cmath>

namespace engine::cutting {

namespace {

// Row operations on two matrices of `size` rows, both by rows.
class Elimination {
public:
    Elimination(std::vector<double>& matrix, std::vector<double>& inverse, std::size_t size)
        : matrix_{matrix}, inverse_{inverse}, size_{size} {}

    // False where the matrix is singular.
    bool run() {
        for (std::size_t c = 0; c < size_; ++c) {
            const std::size_t pivot = largest_below(c);
            if (std::abs(matrix_[pivot * size_ + c]) < 1e-11) return false;
            swap(pivot, c);
            divide(c, matrix_[c * size_ + c]);
            for (std::size_t r = 0; r < size_; ++r) {
                if (r != c && matrix_[r * size_ + c] != 0.0) subtract(r, c, matrix_[r * size_ + c]);
            }
        }
        return true;
    }

private:
    std::size_t largest_below(std::size_t c) const {
        std::size_t best = c;
        for (std::size_t r = c; r < size_; ++r) {
            if (std::abs(matrix_[r * size_ + c]) > std::abs(matrix_[best * size_ + c])) best = r;
        }
        return best;
    }
    void swap(std::size_t a, std::size_t b) {
        for (std::size_t c = 0; a != b && c < size_; ++c) {
            std::swap(matrix_[a * size_ + c], matrix_[b * size_ + c]);
            std::swap(inverse_[a * size_ + c], inverse_[b * size_ + c]);
        }
    }
    void divide(std::size_t row, double by) {
        for (std::size_t c = 0; c < size_; ++c) {
            matrix_[row * size_ + c] /= by;
            inverse_[row * size_ + c] /= by;
        }
    }
    void subtract(std::size_t row, std::size_t from, double times) {
        for (std::size_t c = 0; c < size_; ++c) {
            matrix_[row * size_ + c] -= times * matrix_[from * size_ + c];
            inverse_[row * size_ + c] -= times * inverse_[from * size_ + c];
        }
    }

    std::vector<double>& matrix_;
    std::vector<double>& inverse_;
    std::size_t size_;
};

}  // namespace

void Simplex::fill_basis_matrix(std::vector<double>& matrix) const {
    for (std::size_t c = 0; c < rows_; ++c) {
        for (const auto& [row, coefficient] : columns_[basis_[c]].entries)
            matrix[static_cast<std::size_t>(row) * rows_ + c] = coefficient;
    }
}

void Simplex::refactor() {
    std::vector<double> matrix(rows_ * rows_, 0.0);
    std::vector<double> by_rows(rows_ * rows_, 0.0);
    fill_basis_matrix(matrix);
    for (std::size_t r = 0; r < rows_; ++r) by_rows[r * rows_ + r] = 1.0;
    if (!Elimination(matrix, by_rows, rows_).run()) return;  // the old one has to do
    for (std::size_t r = 0; r < rows_; ++r) {
        level_[r] = 0;
        for (std::size_t c = 0; c < rows_; ++c) {
            inverse_[c * rows_ + r] = by_rows[r * rows_ + c];
            level_[r] += by_rows[r * rows_ + c] * right_[c];
        }
    }
}

}  // namespace engine::cutting
