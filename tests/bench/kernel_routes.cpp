#include "tests/bench/kernel_routes.h"

#include "tests/bench/processor_time.h"

#include <nlohmann/json.hpp>

#include <cmath>

#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepGProp.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <GProp_GProps.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS_Shape.hxx>
#include <gp_Ax2.hxx>
#include <gp_Circ.hxx>

namespace tests {
namespace {

double mm(model::Nm length) { return static_cast<double>(length) / 1e6; }

// Section axes x and y, the run z: where a piece stands makes no difference to the work.
struct Angle {
    double a = 0.0;
    double b = 0.0;
    double t = 0.0;
    double length = 0.0;
    std::span<const model::Hole> holes;
};

Angle angle_of(const model::Resolved& resolved,
               const model::Catalogue& catalogue,
               model::Index index) {
    const auto& piece = resolved.pieces[index];
    const auto& section = catalogue.sections[piece.section];
    return {section.a.mm(), section.b.mm(), section.thickness.mm(), mm(piece.length),
            resolved.holes_of(piece)};
}

TopoDS_Face polygon_face(const std::vector<gp_Pnt>& corners) {
    BRepBuilderAPI_MakePolygon polygon;
    for (const auto& corner : corners) polygon.Add(corner);
    polygon.Close();
    return BRepBuilderAPI_MakeFace(polygon.Wire(), true).Face();
}

// Leg a is drilled along y, leg b along x.
gp_Dir drilled(const model::Hole& hole) {
    return hole.wall == 0 ? gp_Dir(0, 1, 0) : gp_Dir(1, 0, 0);
}

gp_Pnt centre_of(const model::Hole& hole, double depth) {
    const double gauge = mm(hole.gauge);
    const double along = mm(hole.from_datum);
    return hole.wall == 0 ? gp_Pnt(gauge, depth, along) : gp_Pnt(depth, gauge, along);
}

TopoDS_Shape section_then_holes(const Angle& bar) {
    const auto face = polygon_face({{0, 0, 0},
                                    {bar.a, 0, 0},
                                    {bar.a, bar.t, 0},
                                    {bar.t, bar.t, 0},
                                    {bar.t, bar.b, 0},
                                    {0, bar.b, 0}});
    const TopoDS_Shape whole = BRepPrimAPI_MakePrism(face, gp_Vec(0, 0, bar.length)).Shape();
    if (bar.holes.empty()) return whole;
    TopTools_ListOfShape one;
    TopTools_ListOfShape tools;
    one.Append(whole);
    for (const auto& hole : bar.holes) {
        tools.Append(BRepPrimAPI_MakeCylinder(gp_Ax2(centre_of(hole, -0.25), drilled(hole)),
                                              mm(hole.diameter) / 2.0, bar.t + 0.5)
                         .Shape());
    }
    BRepAlgoAPI_Cut cut;
    cut.SetArguments(one);
    cut.SetTools(tools);
    cut.Build();
    return cut.Shape();
}

TopoDS_Shape drilled_wall(const Angle& bar, int wall) {
    BRepBuilderAPI_MakePolygon outline;
    const double from = wall == 0 ? 0.0 : bar.t;
    const double to = wall == 0 ? bar.a : bar.b;
    const auto at = [&](double across, double along) {
        return wall == 0 ? gp_Pnt(across, 0, along) : gp_Pnt(0, across, along);
    };
    for (const auto& corner : {at(from, 0), at(to, 0), at(to, bar.length), at(from, bar.length)})
        outline.Add(corner);
    outline.Close();
    BRepBuilderAPI_MakeFace face(outline.Wire(), true);
    const gp_Dir through = wall == 0 ? gp_Dir(0, 1, 0) : gp_Dir(1, 0, 0);
    // The outline of leg a runs to the left seen from y, that of leg b seen against x.
    const gp_Dir clockwise = wall == 0 ? gp_Dir(0, 1, 0) : gp_Dir(-1, 0, 0);
    for (const auto& hole : bar.holes) {
        if (hole.wall != wall) continue;
        const gp_Circ circle(gp_Ax2(centre_of(hole, 0.0), clockwise), mm(hole.diameter) / 2.0);
        face.Add(BRepBuilderAPI_MakeWire(BRepBuilderAPI_MakeEdge(circle).Edge()).Wire());
    }
    return BRepPrimAPI_MakePrism(face.Face(), gp_Vec(through) * bar.t).Shape();
}

TopoDS_Shape drilled_walls_united(const Angle& bar) {
    TopTools_ListOfShape one;
    TopTools_ListOfShape other;
    one.Append(drilled_wall(bar, 0));
    other.Append(drilled_wall(bar, 1));
    BRepAlgoAPI_Fuse fuse;
    fuse.SetArguments(one);
    fuse.SetTools(other);
    fuse.Build();
    return fuse.Shape();
}

}  // namespace

KernelTimes kernel_times(const model::Resolved& resolved,
                         const model::Catalogue& catalogue,
                         std::span<const model::Index> pieces,
                         KernelRoute route) {
    KernelTimes times;
    std::vector<TopoDS_Shape> shapes;
    const double start = processor_ms();
    for (const auto index : pieces) {
        const auto bar = angle_of(resolved, catalogue, index);
        shapes.push_back(route == KernelRoute::section_then_holes ? section_then_holes(bar)
                                                                  : drilled_walls_united(bar));
    }
    times.build_ms = processor_ms() - start;
    for (const auto& shape : shapes) {
        GProp_GProps properties;
        BRepGProp::VolumeProperties(shape, properties);
        times.volume += std::abs(properties.Mass());
    }
    // Chords as long as those of 24 to a turn: the angle between them.
    constexpr double fifteen_degrees = 0.2617993877991494;
    const double mesh_start = processor_ms();
    for (const auto& shape : shapes)
        BRepMesh_IncrementalMesh(shape, 1.0, false, fifteen_degrees, false);
    times.mesh_ms = processor_ms() - mesh_start;
    return times;
}

std::string pieces_for_wasm(const model::Resolved& resolved,
                            const model::Catalogue& catalogue,
                            std::span<const model::Index> pieces) {
    auto all = nlohmann::json::array();
    for (const auto index : pieces) {
        const auto bar = angle_of(resolved, catalogue, index);
        auto holes = nlohmann::json::array();
        for (const auto& hole : bar.holes)
            holes.push_back(
                {hole.wall, mm(hole.gauge), mm(hole.from_datum), mm(hole.diameter) / 2.0});
        all.push_back(
            {{"a", bar.a}, {"b", bar.b}, {"t", bar.t}, {"length", bar.length}, {"holes", holes}});
    }
    return all.dump();
}

}  // namespace tests
