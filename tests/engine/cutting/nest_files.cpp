#include "tests/engine/cutting/nest_files.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

namespace tests {

namespace {

namespace fs = std::filesystem;

std::string text_of(const fs::path& file) {
    std::ifstream in(file);
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
}

using Bounds = std::map<std::string, std::pair<std::int64_t, std::int64_t>>;

// The column is "453", "180810-181010 cents" or "60640 cents".
Bounds known_bounds(const fs::path& cutting) {
    Bounds bounds;
    std::ifstream in(cutting / "instances.csv");
    for (std::string line; std::getline(in, line);) {
        std::stringstream fields(line);
        std::vector<std::string> row(5);
        for (std::string& field : row) std::getline(fields, field, ',');
        std::stringstream numbers(row[4]);
        std::int64_t least = 0;
        if (!(numbers >> least)) continue;
        std::int64_t most = least;
        if (numbers.peek() == '-') numbers.ignore() >> most;
        bounds[row[0]] = {least, most};
    }
    return bounds;
}

void know(NestFile& file, const Bounds& bounds) {
    const auto found = bounds.find(file.name);
    if (found == bounds.end()) return;
    file.least = found->second.first;
    file.most = found->second.second;
}

// "kerf trim", K, K x "length price supply(-1: unlimited)", m, m x "length quantity".
engine::NestProblem own_problem(std::istream& in) {
    engine::NestProblem problem;
    std::int64_t trim = 0;
    std::size_t stocks = 0;
    in >> problem.kerf >> trim >> stocks;
    problem.stock.resize(stocks);
    for (engine::NestStock& stock : problem.stock) {
        std::int64_t supply = 0;
        in >> stock.length >> stock.price >> supply;
        if (supply >= 0) stock.supply = supply;
        stock.trim_start = trim;
        stock.is_remnant = stock.price == 0;
    }
    std::size_t pieces = 0;
    in >> pieces;
    problem.pieces.resize(pieces);
    for (engine::NestPiece& piece : problem.pieces) in >> piece.length >> piece.quantity;
    return problem;
}

// Pieces with their kerf rounded up, bars with one kerf down: what can be cut of it can be cut.
void round_to_tenths(engine::NestProblem& problem) {
    const std::int64_t kerf = problem.kerf;
    problem.kerf /= 10;
    for (engine::NestPiece& piece : problem.pieces)
        piece.length = (piece.length + kerf + 9) / 10 - problem.kerf;
    for (engine::NestStock& stock : problem.stock) {
        stock.length = (stock.length - stock.trim_start + kerf) / 10 - problem.kerf;
        stock.trim_start /= 10;
        stock.length += stock.trim_start;
    }
}

// OR-Library: count, then name, "capacity pieces best", lengths; tenths in the triplets.
std::vector<NestFile> or_library(const fs::path& path, const std::string& prefix) {
    std::vector<NestFile> files;
    std::stringstream in(text_of(path));
    std::size_t count = 0;
    in >> count;
    for (std::size_t i = 0; i < count; ++i) {
        std::string name;
        double capacity = 0;
        std::size_t pieces = 0;
        int best = 0;
        if (!(in >> name >> capacity >> pieces >> best)) break;
        const auto units = [&](double length) {
            return std::llround(length * (name[0] == 't' ? 10 : 1));
        };
        std::vector<engine::NestPiece> list(pieces);
        for (engine::NestPiece& piece : list) {
            double length = 0;
            in >> length;
            piece.length = units(length);
        }
        files.push_back({prefix + name, one_bar_problem(units(capacity), list), {}, {}});
    }
    return files;
}

// 'name', m, capacity, m x "length quantity".
std::vector<NestFile> named_list(const fs::path& path, const std::string& prefix) {
    std::vector<NestFile> files;
    std::stringstream in(text_of(path));
    for (std::string line; std::getline(in, line);) {
        if (line.find('\'') == std::string::npos) continue;
        std::string name;
        for (const char c : line) {
            if (std::isalnum(static_cast<unsigned char>(c))) name += c;
        }
        std::size_t kinds = 0;
        std::int64_t capacity = 0;
        in >> kinds >> capacity;
        std::vector<engine::NestPiece> list(kinds);
        for (engine::NestPiece& piece : list) in >> piece.length >> piece.quantity;
        files.push_back({prefix + name, one_bar_problem(capacity, list), {}, {}});
    }
    return files;
}

std::string output_of(const std::string& command) {
    std::string text;
    FILE* pipe = popen(command.c_str(), "r");
    if (!pipe) return text;
    char part[4096];
    while (const std::size_t read = std::fread(part, 1, sizeof part, pipe)) text.append(part, read);
    pclose(pipe);
    return text;
}

// Many files of "n, capacity, n x length" in one archive.
std::vector<NestFile> archive(const fs::path& path, const std::string& prefix) {
    std::vector<NestFile> files;
    if (!fs::exists(path)) return files;
    std::stringstream names(output_of("unzip -Z1 '" + path.string() + "' 2>/dev/null"));
    std::stringstream in(output_of("unzip -p '" + path.string() + "' 2>/dev/null"));
    for (std::string name; std::getline(names, name);) {
        std::size_t pieces = 0;
        std::int64_t capacity = 0;
        in >> pieces >> capacity;
        std::vector<engine::NestPiece> list(pieces);
        for (engine::NestPiece& piece : list) in >> piece.length;
        files.push_back(
            {prefix + name.substr(0, name.find('.')), one_bar_problem(capacity, list), {}, {}});
    }
    return files;
}

}  // namespace

engine::NestProblem one_bar_problem(std::int64_t length,
                                    const std::vector<engine::NestPiece>& pieces) {
    engine::NestProblem problem;
    problem.stock.push_back({.length = length, .price = 1});
    problem.pieces = pieces;
    return problem;
}

std::vector<NestFile> own_nest_files(const std::string& reference, OwnGrid grid) {
    const fs::path cutting = fs::path(reference) / "cutting";
    std::vector<NestFile> files;
    if (!fs::exists(cutting / "instances/own")) return files;
    const Bounds bounds = known_bounds(cutting);
    for (const auto& entry : fs::directory_iterator(cutting / "instances/own")) {
        std::stringstream in(text_of(entry.path()));
        files.push_back({entry.path().stem().string(), own_problem(in), {}, {}});
        know(files.back(), bounds);
        if (grid == OwnGrid::tenths)
            round_to_tenths(files.back().problem);
        else
            files.back().least.reset();
    }
    std::sort(files.begin(), files.end(),
              [](const NestFile& a, const NestFile& b) { return a.name < b.name; });
    return files;
}

std::vector<NestSet> published_nest_sets(const std::string& reference) {
    const fs::path folder = fs::path(reference) / "cutting/instances";
    if (!fs::exists(folder)) return {};
    const fs::path cc0 = folder / "esicup_cc0";
    const fs::path falkenauer = cc0 / "falkenauer";
    std::vector<NestSet> sets;
    sets.push_back({"Falkenauer u120", or_library(folder / "orlib/binpack1.txt", "Falkenauer_")});
    const char* names[] = {"u250", "u500", "u1000", "t60", "t120", "t249", "t501"};
    for (std::size_t i = 0; i < std::size(names); ++i)
        sets.push_back(
            {std::string("Falkenauer ") + names[i],
             or_library(falkenauer / ("binpack" + std::to_string(i + 2) + ".txt"), "Falkenauer_")});
    sets.push_back({"Schwerin 1", named_list(cc0 / "schwerin/SCH_WAE1.BPP", "Schwerin1_")});
    sets.push_back({"Schwerin 2", named_list(cc0 / "schwerin/SCH_WAE2.BPP", "Schwerin2_")});
    sets.push_back({"Waescher 1", named_list(cc0 / "waescher/WAE_GAU1.BPP", "Waescher_")});
    sets.push_back({"Waescher 2", named_list(cc0 / "waescher/WAE_GAU2.BPP", "Waescher_")});
    sets.push_back({"Scholl 1", archive(cc0 / "scholl/bin1data.zip", "Scholl_")});
    sets.push_back({"Scholl 2", archive(cc0 / "scholl/bin2data.zip", "Scholl_")});
    sets.push_back({"Scholl 3", archive(cc0 / "scholl/bin3data.zip", "Scholl_")});
    sets.push_back({"Hard28", named_list(cc0 / "hard28/hard28", "Hard28_")});
    const Bounds bounds = known_bounds(fs::path(reference) / "cutting");
    for (NestSet& set : sets) {
        for (NestFile& file : set.files) know(file, bounds);
    }
    std::erase_if(sets, [](const NestSet& set) { return set.files.empty(); });
    return sets;
}

}  // namespace tests
