#include "engine/cutting/nest_input.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <string>

namespace engine::cutting {

namespace {

std::string piece_place(std::size_t place) { return "piece " + std::to_string(place + 1); }
std::string stock_place(std::size_t place) { return "stock " + std::to_string(place + 1); }

Error wrong(std::string where, std::string message) {
    return {ErrorCode::invalid_value, std::move(where), std::move(message)};
}

Error too_much(std::string where, std::string message) {
    return {ErrorCode::out_of_range, std::move(where), std::move(message)};
}

std::optional<Error> mistake_of_length(std::int64_t length, std::int64_t least, std::string where) {
    if (length < least)
        return wrong(std::move(where), least > 0 ? "must be longer than 0" : "must not be below 0");
    if (length > longest_length)
        return too_much(std::move(where),
                        "is longer than " + std::to_string(longest_length) + "; use a larger unit");
    return std::nullopt;
}

std::optional<Error> mistake_of_pieces(const NestProblem& problem) {
    std::int64_t all = 0;
    for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
        const NestPiece& piece = problem.pieces[p];
        if (auto error = mistake_of_length(piece.length, 1, piece_place(p) + ", length"))
            return error;
        if (piece.quantity < 0) return wrong(piece_place(p) + ", quantity", "must not be below 0");
        all += std::min(piece.quantity, most_pieces + 1);
        if (all > most_pieces)
            return too_much(
                piece_place(p) + ", quantity",
                "more than " + std::to_string(most_pieces) + " pieces in all; nest them in parts");
    }
    return std::nullopt;
}

std::optional<Error> mistake_of_price(const NestStock& stock, std::size_t place) {
    const std::string where = stock_place(place) + ", price";
    if (stock.price < 0) return wrong(where, "must not be below 0");
    if (stock.price > highest_price)
        return too_much(where, "is above " + std::to_string(highest_price) + " cents");
    if (stock.price == 0 && !stock.supply)
        return wrong(where,
                     "is 0 for as many bars as are wanted; give its price, or how many there are");
    return std::nullopt;
}

std::optional<Error> mistake_of_stock(const NestStock& stock, std::size_t place) {
    const std::string where = stock_place(place);
    if (auto error = mistake_of_length(stock.length, 1, where + ", length")) return error;
    if (auto error = mistake_of_length(stock.trim_start, 0, where + ", trim at the start"))
        return error;
    if (auto error = mistake_of_length(stock.trim_end, 0, where + ", trim at the end"))
        return error;
    if (stock.supply && *stock.supply < 0) return wrong(where + ", supply", "must not be below 0");
    return mistake_of_price(stock, place);
}

std::int64_t usable(const NestStock& stock) {
    return stock.length - stock.trim_start - stock.trim_end;
}

// The longest piece that the vice lets be cut from the bar by itself.
std::int64_t longest_piece(const NestProblem& problem, const NestStock& stock) {
    const bool can_be_held = stock.length - stock.trim_start >= problem.least_held;
    return can_be_held && stock.supply.value_or(1) > 0 ? usable(stock) : 0;
}

std::optional<Error> mistake_of_fit(const NestProblem& problem) {
    std::int64_t longest = 0;
    for (const NestStock& stock : problem.stock)
        longest = std::max(longest, longest_piece(problem, stock));
    for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
        const NestPiece& piece = problem.pieces[p];
        if (piece.quantity == 0 || piece.length <= longest) continue;
        const std::string is_so_long = "is " + std::to_string(piece.length) + " long; ";
        if (longest == 0)
            return too_much(piece_place(p), is_so_long + "there is no bar to cut it from");
        return too_much(piece_place(p), is_so_long + "the longest that any bar gives is " +
                                            std::to_string(longest) +
                                            "; splice it or offer a longer bar");
    }
    return std::nullopt;
}

int supply_of(const NestStock& stock, std::int64_t pieces) {
    if (usable(stock) <= 0) return 0;
    return static_cast<int>(std::min(stock.supply.value_or(pieces), pieces));
}

std::int64_t common_measure(const Task& task) {
    std::int64_t measure = 0;
    for (const Item& item : task.items) measure = std::gcd(measure, item.weight);
    return std::max<std::int64_t>(1, measure);
}

std::int64_t whole_times(std::int64_t length, std::int64_t measure) {
    return length / measure - (length % measure < 0 ? 1 : 0);
}

// In the largest unit of which all items are whole numbers: what else a bar has is of no use, and
// fewer cells are needed. A vice's rule, weight <= capacity - hold + longest, is for one piece
// longest = weight - kerf: the kerf moves into what holds.
void measure_anew(Task& task, std::int64_t kerf) {
    const std::int64_t measure = common_measure(task);
    if (measure == 1) return;
    for (Item& item : task.items) {
        item.weight /= measure;
        item.longest = item.weight;
    }
    for (Bar& bar : task.bars) {
        const std::int64_t beside_longest = whole_times(bar.capacity - bar.hold - kerf, measure);
        bar.capacity = whole_times(bar.capacity, measure);
        bar.hold = bar.capacity - beside_longest;
    }
}

}  // namespace

std::optional<Error> mistake(const NestProblem& problem) {
    if (auto error = mistake_of_length(problem.kerf, 0, "kerf")) return error;
    if (auto error = mistake_of_length(problem.least_held, 0, "least held length")) return error;
    if (auto error = mistake_of_pieces(problem)) return error;
    if (problem.stock.size() > most_stock)
        return too_much("stock", "more than " + std::to_string(most_stock) +
                                     " kinds of bar; put equal remnants together");
    for (std::size_t s = 0; s < problem.stock.size(); ++s) {
        if (auto error = mistake_of_stock(problem.stock[s], s)) return error;
    }
    return mistake_of_fit(problem);
}

Task task_of(const NestProblem& problem) {
    Task task;
    std::map<std::int64_t, std::pair<int, std::int64_t>, std::greater<>> by_length;
    std::int64_t pieces = 0;
    for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
        const NestPiece& piece = problem.pieces[p];
        if (piece.quantity == 0) continue;
        by_length.try_emplace(piece.length, static_cast<int>(p), 0).first->second.second +=
            piece.quantity;
        pieces += piece.quantity;
    }
    for (const auto& [length, kind] : by_length)
        task.items.push_back({.weight = length + problem.kerf,
                              .longest = length,
                              .demand = static_cast<int>(kind.second),
                              .kinds = {kind.first},
                              .apart = {}});
    for (const NestStock& stock : problem.stock)
        task.bars.push_back({.capacity = usable(stock) + problem.kerf,
                             .hold = problem.least_held - stock.trim_end,
                             .price = stock.price,
                             .bought = stock.is_remnant || stock.price == 0 ? 0 : stock.length,
                             .supply = supply_of(stock, pieces)});
    measure_anew(task, problem.kerf);
    return task;
}

}  // namespace engine::cutting
