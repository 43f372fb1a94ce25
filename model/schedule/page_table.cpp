#include "model/schedule/page_table.h"

#include "model/schedule/balanced_rows.h"
#include "model/schedule/wrapped_lines.h"

#include <algorithm>
#include <cmath>

namespace model {
namespace {

using engine::LetterWeight;
using engine::TextAnchor;

constexpr double between = 4.0;  // columns, mm
constexpr double box_size = 4.0;

class Table {
public:
    Table(PageFlow& flow,
          const std::vector<TableColumn>& columns,
          const std::vector<TableCells>& rows,
          double size)
        : flow_{flow}, columns_{columns}, size_{size} {
        find_widths(rows);
    }

    void draw(const std::vector<TableCells>& rows) {
        // A few rows stay together, and the heads do not stay behind with a row or two.
        const std::size_t together = rows.size() <= 5 ? rows.size() : 3;
        flow_.make_room(2 * line() + 2.0 + static_cast<double>(together) * height_of(1));
        draw_balanced(flow_, rows.size(), [&](std::size_t row, bool is_top) {
            if (is_top) draw_head();
            draw_row(rows[row]);
        });
        if (rows.empty()) draw_head();
    }

private:
    double line() const { return size_ * 1.28; }
    double row_gap() const { return size_ * 0.5; }
    LetterWeight weight(std::size_t k) const { return columns_[k].weight; }

    void find_widths(const std::vector<TableCells>& rows) {
        for (std::size_t k = 0; k < columns_.size(); ++k) {
            double width = engine::text_width(columns_[k].head, head_size(), LetterWeight::bold);
            for (const auto& row : rows) {
                const double own = engine::text_width(row[k], size_, weight(k));
                width = std::max(width, own + (columns_[k].is_box ? box_size + 1.5 : 0.0));
            }
            widths_.push_back(width);
        }
        narrow_to(flow_.width() - between * static_cast<double>(columns_.size() - 1));
    }

    // The widest columns give way, down to a common width.
    void narrow_to(double room) {
        double sum = 0.0;
        for (const double width : widths_) sum += width;
        if (sum <= room) return;
        std::vector<double> rising = widths_;
        std::ranges::sort(rising);
        double rest = room;
        for (std::size_t i = 0; i < rising.size(); ++i) {
            const double share = rest / static_cast<double>(rising.size() - i);
            if (rising[i] > share) {
                for (double& width : widths_) width = std::min(width, share);
                return;
            }
            rest -= rising[i];
        }
    }

    bool has_box() const {
        return std::ranges::find(columns_, true, &TableColumn::is_box) != columns_.end();
    }
    double head_size() const { return size_ * 0.86; }

    double left_of(std::size_t column) const {
        double x = flow_.left();
        for (std::size_t k = 0; k < column; ++k) x += widths_[k] + between;
        return x;
    }

    void put(std::size_t k, double y, const std::string& text, double size, LetterWeight weight) {
        const auto anchor = columns_[k].anchor;
        const double beside = columns_[k].is_box ? box_size + 1.5 : 0.0;
        flow_.page().draw_text(
            {left_of(k) + beside + engine::before_anchor(widths_[k] - beside, anchor), y}, text,
            {.size = size, .weight = weight, .anchor = anchor});
    }

    void draw_head() {
        std::size_t most = 1;
        std::vector<std::vector<std::string>> heads;
        for (std::size_t k = 0; k < columns_.size(); ++k) {
            heads.push_back(
                wrapped_lines(columns_[k].head, head_size(), widths_[k], LetterWeight::bold));
            most = std::max(most, heads.back().size());
        }
        for (std::size_t k = 0; k < columns_.size(); ++k) {
            for (std::size_t i = 0; i < heads[k].size(); ++i) {
                const double x = left_of(k);
                flow_.page().draw_text({x + engine::before_anchor(widths_[k], columns_[k].anchor),
                                        flow_.y() + head_size() + static_cast<double>(i) * line()},
                                       heads[k][i],
                                       {.size = head_size(),
                                        .weight = LetterWeight::bold,
                                        .anchor = columns_[k].anchor});
            }
        }
        flow_.skip(static_cast<double>(most) * line() + 0.6);
        rule(engine::narrow_width);
        flow_.skip(0.8);
        first_row_ = true;
    }

    void rule(double width) {
        const double y = flow_.y();
        flow_.page().draw_line({flow_.left(), y}, {flow_.left() + flow_.width(), y},
                               {.width = width, .ink = engine::Ink::grey_50});
    }

    void draw_row(const TableCells& row) {
        std::vector<std::vector<std::string>> cells;
        std::size_t most = 1;
        for (std::size_t k = 0; k < columns_.size(); ++k) {
            const double beside = columns_[k].is_box ? box_size + 1.5 : 0.0;
            cells.push_back(wrapped_lines(row[k], size_, widths_[k] - beside, weight(k)));
            most = std::max(most, cells.back().size());
        }
        const auto page = flow_.pages().size();
        flow_.make_room(std::min(height_of(most), room_below_head()));
        if (flow_.pages().size() != page) draw_head();
        if (!first_row_) rule(engine::hair_width);
        first_row_ = false;
        for (std::size_t from = 0; from < most;) {
            if (from > 0) {
                flow_.new_page();
                draw_head();
            }
            const std::size_t to = std::min(most, from + lines_in(flow_.room()));
            draw_lines(row, cells, from, to);
            from = to;
        }
    }

    double height_of(std::size_t lines) const {
        return std::max(static_cast<double>(lines) * line() + row_gap(),
                        has_box() ? box_size + 1.2 : 0.0);
    }
    std::size_t lines_in(double room) const {
        return static_cast<std::size_t>(std::max(1.0, std::floor((room - row_gap()) / line())));
    }
    // On a page that begins with the heads, which have two lines at most where they are words.
    double room_below_head() const { return flow_.room_of_page() - 2 * line() - 2.0; }

    void draw_lines(const TableCells& row,
                    const std::vector<std::vector<std::string>>& cells,
                    std::size_t from,
                    std::size_t to) {
        const double top = flow_.y() + row_gap() / 2;
        for (std::size_t k = 0; k < columns_.size(); ++k) {
            const bool has_text = !columns_[k].box_needs_text || !row[k].empty();
            if (columns_[k].is_box && has_text && from == 0)
                flow_.page().draw_rectangle({left_of(k), top + 0.2, box_size, box_size});
            for (std::size_t i = from; i < std::min(to, cells[k].size()); ++i) {
                put(k, top + size_ + static_cast<double>(i - from) * line(), cells[k][i], size_,
                    weight(k));
            }
        }
        flow_.skip(height_of(to - from));
    }

    PageFlow& flow_;
    const std::vector<TableColumn>& columns_;
    double size_;
    std::vector<double> widths_;
    bool first_row_ = true;
};

}  // namespace

void draw_table(PageFlow& flow,
                const std::vector<TableColumn>& columns,
                const std::vector<TableCells>& rows,
                double size) {
    Table(flow, columns, rows, size).draw(rows);
}

}  // namespace model
