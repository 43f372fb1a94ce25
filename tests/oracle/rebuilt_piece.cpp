#include "tests/oracle/rebuilt_piece.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <BRepAdaptor_Surface.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRepOffsetAPI_ThruSections.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakeHalfSpace.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRep_Tool.hxx>
#include <GProp_GProps.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS.hxx>
#include <gp_Ax2.hxx>
#include <gp_Pln.hxx>

namespace tests {
namespace {

using Json = nlohmann::json;
using Loop = std::vector<std::array<double, 2>>;

gp_Vec vector_of(const Json& json) {
    return {json[0].get<double>(), json[1].get<double>(), json[2].get<double>()};
}

gp_Pnt point_of(const Json& json) { return gp_Pnt(vector_of(json).XYZ()); }

Loop loop_of(const Json& json) {
    Loop loop;
    for (const auto& corner : json)
        loop.push_back({corner[0].get<double>(), corner[1].get<double>()});
    return loop;
}

TopoDS_Shape united(const std::vector<TopoDS_Shape>& shapes) {
    if (shapes.size() == 1) return shapes.front();
    TopTools_ListOfShape one;
    TopTools_ListOfShape others;
    one.Append(shapes.front());
    for (std::size_t i = 1; i < shapes.size(); ++i) others.Append(shapes[i]);
    BRepAlgoAPI_Fuse fuse;
    fuse.SetArguments(one);
    fuse.SetTools(others);
    fuse.Build();
    fuse.SimplifyResult();
    return fuse.Shape();
}

TopoDS_Shape without(const TopoDS_Shape& shape, const std::vector<TopoDS_Shape>& tools) {
    if (tools.empty()) return shape;
    TopTools_ListOfShape one;
    TopTools_ListOfShape others;
    one.Append(shape);
    for (const auto& tool : tools) others.Append(tool);
    BRepAlgoAPI_Cut cut;
    cut.SetArguments(one);
    cut.SetTools(others);
    cut.Build();
    return cut.Shape();
}

// ---- walls --------------------------------------------------------------------------------------

struct Wall {
    gp_Pnt origin;
    gp_Vec u;
    gp_Vec v;
    gp_Vec n;
    double thickness = 0.0;

    explicit Wall(const Json& plate)
        : origin{point_of(plate["origin"])},
          u{vector_of(plate["u"])},
          v{vector_of(plate["v"])},
          n{vector_of(plate["n"])},
          thickness{plate["thickness"].get<double>()} {}

    gp_Pnt at(double along, double across, double depth) const {
        return origin.Translated(u * along + v * across + n * depth);
    }
};

TopoDS_Wire wire_of(const Wall& wall, const Loop& loop, double depth) {
    BRepBuilderAPI_MakePolygon polygon;
    for (const auto& corner : loop) polygon.Add(wall.at(corner[0], corner[1], depth));
    polygon.Close();
    return polygon.Wire();
}

TopoDS_Shape between(const Wall& wall, const Loop& near, const Loop& far) {
    if (near == far) {
        const auto face = BRepBuilderAPI_MakeFace(wire_of(wall, near, 0.0), true).Face();
        return BRepPrimAPI_MakePrism(face, wall.n * wall.thickness).Shape();
    }
    BRepOffsetAPI_ThruSections loft{true, true, 1e-9};
    loft.CheckCompatibility(false);
    loft.AddWire(wire_of(wall, near, 0.0));
    loft.AddWire(wire_of(wall, far, wall.thickness));
    loft.Build();
    return loft.Shape();
}

// A cut's plane, and the half space that it takes.
struct Cut {
    double at = 0.0;
    gp_Pnt origin;
    gp_Vec across;

    Cut(const Json& json, const gp_Pnt& datum, const gp_Vec& run)
        : at{json["at"].get<double>()},
          origin{datum.Translated(run * at)},
          across{vector_of(json["across"])} {}

    bool touches(const gp_Pnt& point) const {
        return std::abs(gp_Vec(origin, point).Dot(across.Normalized())) < 5e-6;
    }
    TopoDS_Shape half_space() const {
        const auto face = BRepBuilderAPI_MakeFace(gp_Pln(origin, gp_Dir(across))).Face();
        return BRepPrimAPI_MakeHalfSpace(face, origin.Translated(across * 100.0)).Solid();
    }
};

// Corners that a sloping cut makes are rounded: they go back to the piece's square end, and the cut
// itself takes what is too much.
void square_up(
    Loop& loop, const Wall& wall, double depth, const std::vector<Cut>& cuts, double length) {
    for (auto& corner : loop) {
        const auto point = wall.at(corner[0], corner[1], depth);
        for (const auto& cut : cuts) {
            if (!cut.touches(point)) continue;
            corner[0] = cut.across.Dot(wall.u) < 0.0 ? 0.0 : length;
        }
    }
}

TopoDS_Shape wall_of(const Json& plate, const std::vector<Cut>& cuts, double length) {
    const Wall wall{plate};
    auto near = loop_of(plate["outline"]);
    auto far = plate.contains("outline_far") ? loop_of(plate["outline_far"]) : near;
    square_up(near, wall, 0.0, cuts, length);
    square_up(far, wall, wall.thickness, cuts, length);
    const auto whole = between(wall, near, far);
    if (!plate.contains("cut_outs")) return whole;
    std::vector<TopoDS_Shape> openings;
    const auto& inner = plate["cut_outs"];
    const auto& inner_far = plate.contains("cut_outs_far") ? plate["cut_outs_far"] : inner;
    for (std::size_t i = 0; i < inner.size(); ++i)
        openings.push_back(between(wall, loop_of(inner[i]), loop_of(inner_far[i])));
    return without(whole, openings);
}

// Wider than the wall at both ends; beside a hole there is nothing else to cut.
TopoDS_Shape drill(const Wall& wall, const Json& hole) {
    constexpr double over = 0.25;
    const auto from = wall.at(hole["at"][0].get<double>(), hole["at"][1].get<double>(), -over);
    return BRepPrimAPI_MakeCylinder(gp_Ax2(from, gp_Dir(wall.n)),
                                    hole["diameter"].get<double>() / 2.0,
                                    wall.thickness + 2.0 * over)
        .Shape();
}

// ---- roundings ----------------------------------------------------------------------------------

// Section axes and the run of a piece of bar.
struct SectionAxes {
    gp_Pnt origin;
    gp_Vec a;
    gp_Vec b;
    gp_Vec run;
    double length = 0.0;
};

// The corner of a square that a quarter circle leaves: from `corner` towards the signs.
TopoDS_Shape corner_piece(const SectionAxes& axes,
                          std::array<double, 2> corner,
                          std::array<int, 2> towards,
                          double radius) {
    const auto at = [&](double a, double b) {
        return axes.origin.Translated(axes.a * a + axes.b * b);
    };
    const double far_a = corner[0] + towards[0] * radius;
    const double far_b = corner[1] + towards[1] * radius;
    BRepBuilderAPI_MakePolygon square;
    square.Add(at(corner[0], corner[1]));
    square.Add(at(far_a, corner[1]));
    square.Add(at(far_a, far_b));
    square.Add(at(corner[0], far_b));
    square.Close();
    const auto face = BRepBuilderAPI_MakeFace(square.Wire(), true).Face();
    const auto prism = BRepPrimAPI_MakePrism(face, axes.run * axes.length).Shape();
    const auto below = at(far_a, far_b).Translated(axes.run * -1.0);
    const auto round =
        BRepPrimAPI_MakeCylinder(gp_Ax2(below, gp_Dir(axes.run)), radius, axes.length + 2.0)
            .Shape();
    return without(prism, {round});
}

struct Roundings {
    std::vector<TopoDS_Shape> added;
    std::vector<TopoDS_Shape> taken;
};

Roundings roundings_of(const SectionAxes& axes, const model::Section& section) {
    const double a = section.a.mm();
    const double b = section.b.mm();
    const double t = section.thickness.mm();
    const double web = section.web_thickness.mm();
    const double root = section.root_radius.mm();
    const double toe = section.toe_radius.mm();
    Roundings made;
    const auto add = [&](std::array<double, 2> corner, std::array<int, 2> towards) {
        if (root > 0.0) made.added.push_back(corner_piece(axes, corner, towards, root));
    };
    const auto take = [&](std::array<double, 2> corner, std::array<int, 2> towards) {
        if (toe > 0.0) made.taken.push_back(corner_piece(axes, corner, towards, toe));
    };
    switch (section.form) {
        case model::SectionForm::angle:
            add({t, t}, {1, 1});
            take({a, t}, {-1, -1});
            take({t, b}, {-1, -1});
            break;
        case model::SectionForm::channel:
            add({t, web}, {1, 1});
            add({a - t, web}, {-1, 1});
            take({t, b}, {-1, -1});
            take({a - t, b}, {1, -1});
            break;
        case model::SectionForm::tube:
            add({t, t}, {1, 1});
            add({a - t, t}, {-1, 1});
            add({a - t, b - t}, {-1, -1});
            add({t, b - t}, {1, -1});
            take({0.0, 0.0}, {1, 1});
            take({a, 0.0}, {-1, 1});
            take({a, b}, {-1, -1});
            take({0.0, b}, {1, -1});
            break;
        case model::SectionForm::flat:
            break;
    }
    return made;
}

}  // namespace

TopoDS_Shape rebuilt_piece(const Json& piece, const model::Catalogue& catalogue) {
    const auto datum = point_of(piece["datum"]);
    const auto run = vector_of(piece["run"]);
    const double length = piece["length"].get<double>();
    std::vector<Cut> cuts;
    if (piece.contains("cuts"))
        for (const auto& cut : piece["cuts"]) cuts.emplace_back(cut, datum, run);
    std::vector<TopoDS_Shape> added;
    std::vector<TopoDS_Shape> taken;
    for (const auto& plate : piece["plates"]) {
        added.push_back(wall_of(plate, cuts, length));
        for (const auto& hole : plate["holes"]) taken.push_back(drill(Wall{plate}, hole));
    }
    // In every form the first wall lies along a with its outer face on b = 0.
    const Wall first{piece["plates"][0]};
    if (const auto* section = model::find_section(catalogue, piece["section"].get<std::string>())) {
        auto round = roundings_of({datum, first.v, first.n, run, length}, *section);
        added.insert(added.end(), round.added.begin(), round.added.end());
        taken.insert(taken.end(), round.taken.begin(), round.taken.end());
    }
    for (const auto& cut : cuts) taken.push_back(cut.half_space());
    return without(united(added), taken);
}

KernelFacts facts_of(const TopoDS_Shape& shape) {
    KernelFacts facts;
    GProp_GProps properties;
    BRepGProp::VolumeProperties(shape, properties);
    facts.volume = properties.Mass();
    for (TopExp_Explorer at(shape, TopAbs_SOLID); at.More(); at.Next()) ++facts.solids;
    for (TopExp_Explorer at(shape, TopAbs_FACE); at.More(); at.Next()) {
        const BRepAdaptor_Surface surface{TopoDS::Face(at.Current())};
        if (surface.GetType() != GeomAbs_Cylinder) continue;
        const double turn = surface.LastUParameter() - surface.FirstUParameter();
        if (std::abs(turn - 2.0 * std::acos(-1.0)) < 1e-9) ++facts.round_holes;
    }
    facts.is_valid = BRepCheck_Analyzer(shape).IsValid();
    facts.is_closed = true;
    for (TopExp_Explorer at(shape, TopAbs_SHELL); at.More(); at.Next())
        facts.is_closed = facts.is_closed && BRep_Tool::IsClosed(at.Current());
    return facts;
}

}  // namespace tests
