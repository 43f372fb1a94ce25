#include "model/project/edit_kinds.h"

namespace model {

namespace {

std::string put_label(const std::string& kind,
                      const std::string& name,
                      const std::string& instead_of) {
    if (instead_of.empty()) return "Add " + kind + " " + name;
    if (instead_of == name) return "Change " + kind + " " + name;
    return "Rename " + kind + " " + instead_of + " to " + name;
}

std::string pair_text(const std::array<std::string, 2>& members) {
    return members[0] + " + " + members[1];
}

std::string some(const std::vector<std::string>& names) {
    if (names.empty()) return "nothing";
    return names.front() + (names.size() > 1 ? " and others" : "");
}

struct Label {
    std::string operator()(const SetTitle&) const { return "Change title"; }
    std::string operator()(const SetShown&) const { return "Change the tape"; }
    std::string operator()(const SetShop&) const { return "Change shop settings"; }
    std::string operator()(const PutDimension& e) const {
        return put_label("dimension", e.dimension.name, e.instead_of);
    }
    std::string operator()(const SetFormula& e) const { return "Change " + e.dimension; }
    std::string operator()(const RemoveDimension& e) const {
        return "Remove dimension " + e.dimension;
    }
    std::string operator()(const PutStock& e) const {
        return put_label("stock", e.stock.name, e.instead_of);
    }
    std::string operator()(const RemoveStock& e) const { return "Remove stock " + e.stock; }
    std::string operator()(const KeepBars& e) const {
        return e.what_was_done.empty() ? "Change the bars of " + e.stock : e.what_was_done;
    }
    std::string operator()(const PutSupplier& e) const {
        return put_label("supplier", e.supplier.name, e.instead_of);
    }
    std::string operator()(const RemoveSupplier& e) const {
        return "Remove supplier " + e.supplier;
    }
    std::string operator()(const NotePurchase&) const { return "Note what was bought"; }
    std::string operator()(const TakePurchaseBack&) const { return "Take back what was paid"; }
    std::string operator()(const PutObstacle& e) const {
        return put_label("obstacle", e.obstacle.name, e.instead_of);
    }
    std::string operator()(const RemoveObstacle& e) const {
        return "Remove obstacle " + e.obstacle;
    }
    std::string operator()(const PutFrame& e) const {
        return put_label("frame", e.frame.name, e.instead_of);
    }
    std::string operator()(const PlaceFrame& e) const { return "Place frame " + e.frame; }
    std::string operator()(const SetFrameRecipe& e) const {
        return "Change how frame " + e.frame + " is joined";
    }
    std::string operator()(const RemoveFrame& e) const { return "Remove frame " + e.frame; }
    std::string operator()(const PutPlane& e) const {
        return put_label("plane", e.plane.name, e.instead_of);
    }
    std::string operator()(const SetPlanePosition& e) const { return "Move plane " + e.plane; }
    std::string operator()(const RemovePlane& e) const { return "Remove plane " + e.plane; }
    std::string operator()(const PutBay& e) const {
        return put_label("bay", e.bay.name, e.instead_of);
    }
    std::string operator()(const RemoveBay& e) const { return "Remove bay " + e.bay; }
    std::string operator()(const PutMember& e) const {
        return put_label("member", e.member.name, e.instead_of);
    }
    std::string operator()(const RemoveMember& e) const { return "Remove member " + e.member; }
    std::string operator()(const SetMemberStock& e) const {
        const std::string which = e.members.empty() ? "all of " + e.frame : some(e.members);
        return "Make " + which + " of " + e.stock;
    }
    std::string operator()(const PutDiagonal& e) const {
        return put_label("diagonal", e.diagonal.name, e.instead_of);
    }
    std::string operator()(const RemoveDiagonal& e) const {
        return "Remove diagonal " + e.diagonal;
    }
    std::string operator()(const PutLeaning& e) const {
        return put_label("leaning member", e.leaning.name, e.instead_of);
    }
    std::string operator()(const RemoveLeaning& e) const {
        return "Remove leaning member " + e.leaning;
    }
    std::string operator()(const PutJoint& e) const {
        return "Change joint " + pair_text(e.joint.members);
    }
    std::string operator()(const RemoveJoint& e) const {
        return "Return joint " + pair_text(e.members) + " to the rule";
    }
    std::string operator()(const PutPanel& e) const {
        return put_label("panel", e.panel.name, e.instead_of);
    }
    std::string operator()(const RemovePanel& e) const { return "Remove panel " + e.panel; }
    std::string operator()(const PutVents& e) const {
        return "Put " + e.name + " openings into panel " + e.panel;
    }
    std::string operator()(const PutLoad& e) const {
        return put_label("load", e.load.name, e.instead_of);
    }
    std::string operator()(const RemoveLoad& e) const { return "Remove load " + e.load; }
    std::string operator()(const PutOpening& e) const {
        return put_label("measured opening", e.opening.name, e.instead_of);
    }
    std::string operator()(const RemoveOpening& e) const {
        return "Remove measured opening " + e.opening;
    }
    std::string operator()(const StartBoxFrame& e) const { return "Start box frame " + e.frame; }
    std::string operator()(const StartSteppedFrame& e) const {
        return "Start stepped frame " + e.frame;
    }
    std::string operator()(const FlipLegs& e) const { return "Flip legs of " + some(e.members); }
    std::string operator()(const TurnEndForEnd& e) const {
        return "Turn " + e.member + " end for end";
    }
    std::string operator()(const SplitMember& e) const {
        return "Split " + e.member + " at " + e.plane;
    }
    std::string operator()(const JoinMembers& e) const {
        return "Join " + e.members[0] + " and " + e.members[1];
    }
    std::string operator()(const MirrorBars& e) const {
        return "Mirror " + (e.bars.empty() ? "all of " + e.frame : some(e.bars));
    }
    std::string operator()(const RepeatBay& e) const { return "Repeat bay " + e.bay; }
    std::string operator()(const CopyFrame& e) const {
        return (e.is_mirrored ? "Copy frame " + e.frame + " mirrored as "
                              : "Copy frame " + e.frame + " as ") +
               e.copy;
    }
    std::string operator()(const TakeOutPlane& e) const {
        return "Remove plane " + e.plane + " with what stands on it";
    }
    std::string operator()(const TakeOutBay& e) const {
        return "Remove bay " + e.bay + " with what is in it";
    }
    std::string operator()(const SurveyWheelWell& e) const { return "Measure " + e.obstacle; }
    std::string operator()(const SurveyWall& e) const { return "Measure " + e.obstacle; }
    std::string operator()(const StepOver& e) const {
        return "Step " + e.frame + " over " + e.obstacle;
    }
};

}  // namespace

std::string label_of(const Edit& edit) { return std::visit(Label{}, edit.one().kind); }

}  // namespace model
