#include "tests/support/skeleton.h"

#include "tests/support/skeleton_bodies.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cctype>
#include <cmath>

namespace tests {
namespace {

using nlohmann::json;

// Thrown and caught in this file only.
struct Unreadable {
    std::string why;
};

std::string text_of(const json& value) {
    return value.is_string() ? value.get<std::string>() : value.dump();
}

std::string text_at(const json& object, const char* key) {
    const auto found = object.find(key);
    return found == object.end() || found->is_null() ? std::string{} : text_of(*found);
}

Nm nm_of(const json& mm) {
    const double nm = mm.get<double>() * 1e6;
    const double whole = std::round(nm);
    if (!(std::abs(nm - whole) < 0.01)) throw Unreadable{mm.dump() + " mm is no whole nanometre"};
    return static_cast<Nm>(whole);
}

Point point_of(const json& value) {
    return {nm_of(value.at(0)), nm_of(value.at(1)), nm_of(value.at(2))};
}

Direction direction_of(const json& value) {
    const Direction d{value.at(0).get<double>(), value.at(1).get<double>(),
                      value.at(2).get<double>()};
    if (std::abs(dot(d, d) - 1.0) > 1e-9) throw Unreadable{value.dump() + " is no unit vector"};
    return d;
}

// from + u * a + v * b, exact along the world's axes.
Point moved(const Point& from, const Direction& u, Nm a, const Direction& v, Nm b) {
    Point p = from;
    for (std::size_t i = 0; i < 3; ++i) {
        p[i] += static_cast<Nm>(std::llround(u[i] * static_cast<double>(a))) +
                static_cast<Nm>(std::llround(v[i] * static_cast<double>(b)));
    }
    return p;
}

std::vector<std::array<Nm, 2>> loop_of(const json& value) {
    std::vector<std::array<Nm, 2>> loop;
    for (const auto& corner : value) loop.push_back({nm_of(corner.at(0)), nm_of(corner.at(1))});
    return loop;
}

SkeletonHole hole_of(const json& value, const SkeletonPlate& plate) {
    SkeletonHole hole;
    hole.id = text_at(value, "id");
    hole.in_plate = {nm_of(value.at("at").at(0)), nm_of(value.at("at").at(1))};
    hole.at = moved(plate.origin, plate.u, hole.in_plate[0], plate.v, hole.in_plate[1]);
    hole.diameter = nm_of(value.at("diameter"));
    hole.operation = text_at(value, "operation");
    if (value.contains("tap")) hole.tap = text_at(value, "tap");
    // None for fixing to the van.
    if (value.contains("joint")) hole.joint = text_at(value, "joint");
    if (value.contains("fastener")) hole.fastener = text_at(value, "fastener");
    return hole;
}

SkeletonPlate plate_of(const json& value) {
    SkeletonPlate plate;
    plate.leg = text_at(value, "leg");
    plate.origin = point_of(value.at("origin"));
    plate.u = direction_of(value.at("u"));
    plate.v = direction_of(value.at("v"));
    plate.n = direction_of(value.at("n"));
    plate.thickness = nm_of(value.at("thickness"));
    plate.outline = loop_of(value.at("outline"));
    if (value.contains("outline_far")) plate.outline_far = loop_of(value["outline_far"]);
    if (value.contains("cut_outs")) {
        for (const auto& loop : value["cut_outs"]) plate.cut_outs.push_back(loop_of(loop));
    }
    plate.bodies = bodies_of(plate);
    if (plate.bodies.empty()) throw Unreadable{"a plate has no outline"};
    plate.bounds = plate.bodies.front().bounds;
    for (const auto& body : plate.bodies) plate.bounds = hull(plate.bounds, body.bounds);
    for (const auto& hole : value.at("holes")) plate.holes.push_back(hole_of(hole, plate));
    return plate;
}

SkeletonPiece piece_of(const json& value) {
    SkeletonPiece piece;
    piece.id = text_at(value, "id");
    piece.mark = text_at(value, "mark");
    piece.hand = text_at(value, "hand");
    piece.member = text_at(value, "member");
    piece.frame = text_at(value, "frame");
    piece.section = text_at(value, "section");
    if (value.contains("joins")) {
        for (const auto& name : value["joins"]) piece.joins.push_back(text_of(name));
    }
    piece.length = nm_of(value.at("length"));
    piece.run = direction_of(value.at("run"));
    piece.datum = point_of(value.at("datum"));
    for (const auto& plate : value.at("plates")) piece.plates.push_back(plate_of(plate));
    return piece;
}

SkeletonFastener fastener_of(const json& value, const std::string& joint) {
    SkeletonFastener fastener;
    fastener.id = text_at(value, "id");
    fastener.joint = joint;
    fastener.at = point_of(value.at("at"));
    fastener.axis = direction_of(value.at("axis"));
    fastener.spec = text_at(value, "spec");
    if (value.contains("hold")) fastener.hold = text_at(value, "hold");
    for (const auto& plate : value.at("stack")) {
        fastener.stack.push_back(
            {text_at(plate, "piece"), text_at(plate, "leg"), nm_of(plate.at("thickness"))});
    }
    fastener.grip_least = nm_of(value.at("grip_least"));
    fastener.grip_most = nm_of(value.at("grip_most"));
    return fastener;
}

void read_joint(const json& value, Skeleton& skeleton) {
    SkeletonJoint joint;
    joint.id = text_at(value, "id");
    joint.recipe = text_at(value, "recipe");
    for (const auto& piece : value.at("pieces")) joint.pieces.push_back(text_of(piece));
    for (const auto& fastener : value.at("fasteners")) {
        joint.fasteners.push_back(skeleton.fasteners.size());
        skeleton.fasteners.push_back(fastener_of(fastener, joint.id));
    }
    skeleton.joints.push_back(std::move(joint));
}

void read_pieces(const std::string& text, Skeleton& skeleton) {
    const json whole = json::parse(text);
    for (const auto& value : whole.at("pieces")) {
        skeleton.pieces.push_back(piece_of(value));
        const auto& id = skeleton.pieces.back().id;
        if (!skeleton.piece_by_id.emplace(id, skeleton.pieces.size() - 1).second) {
            throw Unreadable{"two pieces have the id " + id};
        }
    }
    for (const auto& value : whole.at("joints")) read_joint(value, skeleton);
}

const std::string& file_of(const SkeletonFiles& files, const std::string& name) {
    const auto found = files.find(name);
    if (found == files.end()) throw Unreadable{"the file is missing: " + name};
    return found->second;
}

engine::CsvTable table_of(const SkeletonFiles& files, const std::string& name) {
    auto table = engine::read_csv(file_of(files, name));
    if (!table) throw Unreadable{name + ": " + to_text(table.error())};
    return std::move(table).value();
}

}  // namespace

engine::Result<Skeleton> read_skeleton(const SkeletonFiles& files) {
    Skeleton skeleton;
    try {
        skeleton.cut = table_of(files, "cut.csv");
        skeleton.drill = table_of(files, "drill.csv");
        skeleton.fastener_table = table_of(files, "fasteners.csv");
        skeleton.findings = table_of(files, "findings.csv");
        skeleton.bars = table_of(files, "bars.csv");
        skeleton.sheets = table_of(files, "sheet.csv");
        read_pieces(file_of(files, "pieces.json"), skeleton);
    } catch (const Unreadable& error) {
        return engine::Error{engine::ErrorCode::bad_file, "", error.why};
    } catch (const json::exception& error) {
        return engine::Error{engine::ErrorCode::bad_file, "pieces.json", error.what()};
    }
    return skeleton;
}

bool is_squared(const SkeletonPlate& plate) {
    return world_axis(plate.u) && world_axis(plate.v) && world_axis(plate.n);
}

std::string_view field(const engine::CsvTable& table,
                       const engine::CsvRow& row,
                       std::string_view heading) {
    for (std::size_t i = 0; i < table.header.size(); ++i) {
        if (table.header[i] == heading) return row[i];
    }
    return {};
}

std::optional<Nm> nm_of_mm_text(std::string_view text) {
    const bool negative = !text.empty() && text.front() == '-';
    if (negative) text.remove_prefix(1);
    Nm nm = 0;
    int decimals = -1;
    for (const char c : text) {
        if (c == '.' && decimals < 0) {
            decimals = 0;
            continue;
        }
        if (c < '0' || c > '9' || decimals >= 6) return std::nullopt;
        nm = nm * 10 + (c - '0');
        if (decimals >= 0) ++decimals;
    }
    if (text.empty()) return std::nullopt;
    for (int i = std::max(decimals, 0); i < 6; ++i) nm *= 10;
    return negative ? -nm : nm;
}

std::string stated_member(const SkeletonPiece& piece) {
    const auto at = piece.member.rfind(" part ");
    if (at == std::string::npos) return piece.member;
    const bool numbered =
        std::all_of(piece.member.begin() + static_cast<std::ptrdiff_t>(at) + 6, piece.member.end(),
                    [](unsigned char c) { return std::isdigit(c) != 0; });
    return numbered ? piece.member.substr(0, at) : piece.member;
}

std::vector<std::string> stated_members(const SkeletonPiece& piece) {
    return piece.joins.empty() ? std::vector{stated_member(piece)} : piece.joins;
}

bool is_foot(const SkeletonPiece& piece) {
    return !piece.joins.empty() && piece.member.rfind("foot of ", 0) == 0;
}

double dot(const Direction& a, const Direction& b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

Direction cross(const Direction& a, const Direction& b) {
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

Nm along(const Point& p, const Point& from, const Direction& direction) {
    if (const auto axis = world_axis(direction)) {
        const Nm difference = p[*axis] - from[*axis];
        return direction[*axis] > 0 ? difference : -difference;
    }
    double sum = 0;
    for (std::size_t i = 0; i < 3; ++i) sum += static_cast<double>(p[i] - from[i]) * direction[i];
    return static_cast<Nm>(std::llround(sum));
}

std::optional<std::size_t> world_axis(const Direction& direction) {
    for (std::size_t i = 0; i < 3; ++i) {
        const bool alone = direction[(i + 1) % 3] == 0.0 && direction[(i + 2) % 3] == 0.0;
        if (alone && std::abs(direction[i]) == 1.0) return i;
    }
    return std::nullopt;
}

}  // namespace tests
