#include "engine/geometry/vectors.h"
#include "model/resolve/piece_solid.h"
#include "model/schedule/export.h"
#include "model/schedule/piece_words.h"
#include "model/schedule/step_solid.h"
#include "model/schedule/step_text.h"

#include <vector>

namespace model {
namespace {

// Entities as in ISO 10303-214 (from memory; checked by an independent reader).
class Writer {
public:
    Writer(std::string& out,
           const Project& project,
           const Catalogue& catalogue,
           const Resolved& resolved)
        : out_{out},
          step_{out},
          project_{project},
          resolved_{resolved},
          words_{project, catalogue, resolved},
          solids_{resolved, catalogue} {}

    engine::Result<engine::Done> write() {
        header();
        contexts();
        const auto whole = product(project_.name);
        places_.push_back(axes_of({}));
        std::vector<Part> parts;
        for (Index i = 0; i < resolved_.pieces.size(); ++i) {
            if (!solids_.make(made_, i)) return no_solid(i);
            parts.push_back(part(export_name(words_, resolved_, i)));
        }
        const auto shape = step_.begin("SHAPE_REPRESENTATION");
        step_.text(project_.name);
        list(places_);
        step_.raw(",").ref(context_).end();
        represent(whole.shape, shape);
        for (std::size_t i = 0; i < parts.size(); ++i) place(parts[i], whole, shape, i);
        const auto category = step_.begin("PRODUCT_RELATED_PRODUCT_CATEGORY");
        static_cast<void>(category);
        step_.raw("'part',$");
        list(products_);
        step_.end();
        out_ += "ENDSEC;\nEND-ISO-10303-21;\n";
        return engine::Done{};
    }

private:
    struct Product {
        StepId definition = 0;
        StepId shape = 0;  // PRODUCT_DEFINITION_SHAPE
    };
    struct Part {
        Product product;
        StepId representation = 0;
        StepId origin = 0;
        std::string name;
    };

    engine::Error no_solid(Index piece) const {
        return {.code = engine::ErrorCode::invalid_value,
                .where = export_name(words_, resolved_, piece),
                .message =
                    "its outline or its cut ends leave no solid; mend what its findings "
                    "say, then export again"};
    }

    // No date: the same input gives the same bytes.
    void header() {
        out_ += "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION(('pieces'),'2;1');\nFILE_NAME(";
        step_.text(project_.name);
        out_ +=
            ",'1970-01-01T00:00:00',(''),(''),'Barwright','Barwright','');\n"
            "FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));\nENDSEC;\nDATA;\n";
    }

    StepId whole_entity(std::string_view entity, std::string_view arguments) {
        const auto id = step_.begin(entity);
        step_.raw(arguments).end();
        return id;
    }

    void contexts() {
        const auto application = whole_entity("APPLICATION_CONTEXT",
                                              "'core data for automotive mechanical design "
                                              "processes'");
        step_.begin("APPLICATION_PROTOCOL_DEFINITION");
        step_.raw("'international standard','automotive_design',2000,").ref(application).end();
        product_context_ = step_.begin("PRODUCT_CONTEXT");
        step_.raw("'',").ref(application).raw(",'mechanical'").end();
        definition_context_ = step_.begin("PRODUCT_DEFINITION_CONTEXT");
        step_.raw("'part definition',").ref(application).raw(",'design'").end();
        const auto length = whole_entity("", "LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.)");
        const auto angle = whole_entity("", "NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.)");
        const auto solid_angle =
            whole_entity("", "NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT()");
        const auto uncertainty = step_.begin("UNCERTAINTY_MEASURE_WITH_UNIT");
        step_.raw("LENGTH_MEASURE(1.E-6),").ref(length);
        step_.raw(",'distance_accuracy_value','a nanometre'").end();
        context_ = step_.begin("");
        step_.raw("GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((");
        step_.ref(uncertainty).raw("))GLOBAL_UNIT_ASSIGNED_CONTEXT((").ref(length).raw(",");
        step_.ref(angle).raw(",").ref(solid_angle);
        step_.raw("))REPRESENTATION_CONTEXT('','3D')").end();
    }

    void list(const std::vector<StepId>& ids) {
        step_.raw(",(");
        for (std::size_t i = 0; i < ids.size(); ++i) {
            if (i > 0) step_.raw(",");
            step_.ref(ids[i]);
        }
        step_.raw(")");
    }

    StepId axes_of(const engine::Placement& place) {
        return step_.axes(place.origin, place.z, place.x);
    }

    Product product(std::string_view name) {
        const auto product = step_.begin("PRODUCT");
        step_.text(name).raw(",").text(name).raw(",'',(").ref(product_context_).raw(")").end();
        products_.push_back(product);
        const auto formation = step_.begin("PRODUCT_DEFINITION_FORMATION");
        step_.raw("'','',").ref(product).end();
        const auto definition = step_.begin("PRODUCT_DEFINITION");
        step_.raw("'design','',").ref(formation).raw(",").ref(definition_context_).end();
        const auto shape = step_.begin("PRODUCT_DEFINITION_SHAPE");
        step_.raw("'','',").ref(definition).end();
        return {definition, shape};
    }

    void represent(StepId shape, StepId representation) {
        step_.begin("SHAPE_DEFINITION_REPRESENTATION");
        step_.ref(shape).raw(",").ref(representation).end();
    }

    // In its own axes; left-handed ones cannot be placed, so the solid is mirrored instead.
    Part part(const std::string& name) {
        if (engine::is_mirrored(made_.place)) {
            engine::mirror(made_.solid);
            made_.place.x = engine::scaled(made_.place.x, -1.0);
        }
        Part part{.product = product(name), .name = name};
        part.origin = axes_of({});
        const auto brep = step_solid(step_, made_.solid, name);
        part.representation = step_.begin("ADVANCED_BREP_SHAPE_REPRESENTATION");
        step_.text(name).raw(",(").ref(part.origin).raw(",").ref(brep).raw("),");
        step_.ref(context_).end();
        represent(part.product.shape, part.representation);
        places_.push_back(axes_of(made_.place));
        return part;
    }

    void place(const Part& part, const Product& whole, StepId whole_shape, std::size_t index) {
        const auto use = step_.begin("NEXT_ASSEMBLY_USAGE_OCCURRENCE");
        step_.text(std::to_string(index + 1)).raw(",").text(part.name).raw(",'',");
        step_.ref(whole.definition).raw(",").ref(part.product.definition).raw(",$").end();
        const auto use_shape = step_.begin("PRODUCT_DEFINITION_SHAPE");
        step_.raw("'','',").ref(use).end();
        const auto transformation = step_.begin("ITEM_DEFINED_TRANSFORMATION");
        step_.raw("'','',").ref(part.origin).raw(",").ref(places_[index + 1]).end();
        const auto relation = step_.begin("");
        step_.raw("REPRESENTATION_RELATIONSHIP('','',").ref(part.representation).raw(",");
        step_.ref(whole_shape).raw(")REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION(");
        step_.ref(transformation).raw(")SHAPE_REPRESENTATION_RELATIONSHIP()").end();
        step_.begin("CONTEXT_DEPENDENT_SHAPE_REPRESENTATION");
        step_.ref(relation).raw(",").ref(use_shape).end();
    }

    std::string& out_;
    StepText step_;
    const Project& project_;
    const Resolved& resolved_;
    PieceWords words_;
    PieceSolids solids_;
    PieceSolid made_;
    StepId product_context_ = 0;
    StepId definition_context_ = 0;
    StepId context_ = 0;
    std::vector<StepId> products_;
    std::vector<StepId> places_;  // the whole's own axes, then those of the parts in it
};

}  // namespace

engine::Result<std::string> step_file(const Project& project,
                                      const Catalogue& catalogue,
                                      const Resolved& resolved) {
    constexpr std::size_t per_piece = 12'000;
    constexpr std::size_t per_hole = 1'600;
    std::string out;
    out.reserve(4'000 + resolved.pieces.size() * per_piece + resolved.holes.size() * per_hole);
    const auto written = Writer{out, project, catalogue, resolved}.write();
    if (!written) return written.error();
    return out;
}

}  // namespace model
