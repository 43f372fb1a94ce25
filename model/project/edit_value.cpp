#include "model/project/edit_kinds.h"

#include <utility>

namespace model {

template <class Kind>
requires(AllEdits::has<Kind>) Edit::Edit(Kind kind)
    : one_{std::make_shared<const OneOfAllEdits>(OneOfAllEdits{std::move(kind)})} {}

template <class Kind>
requires(AllEdits::has<Kind>) const Kind* Edit::get_if() const {
    return std::get_if<Kind>(&one_->kind);
}

#define BARWRIGHT_EDIT(Kind)   \
    template Edit::Edit(Kind); \
    template const Kind* Edit::get_if<Kind>() const;

BARWRIGHT_EDIT(SetTitle)
BARWRIGHT_EDIT(SetShown)
BARWRIGHT_EDIT(SetShop)
BARWRIGHT_EDIT(PutDimension)
BARWRIGHT_EDIT(SetFormula)
BARWRIGHT_EDIT(RemoveDimension)
BARWRIGHT_EDIT(PutStock)
BARWRIGHT_EDIT(RemoveStock)
BARWRIGHT_EDIT(KeepBars)
BARWRIGHT_EDIT(PutSupplier)
BARWRIGHT_EDIT(RemoveSupplier)
BARWRIGHT_EDIT(NotePurchase)
BARWRIGHT_EDIT(TakePurchaseBack)
BARWRIGHT_EDIT(PutObstacle)
BARWRIGHT_EDIT(RemoveObstacle)
BARWRIGHT_EDIT(PutFrame)
BARWRIGHT_EDIT(PlaceFrame)
BARWRIGHT_EDIT(SetFrameRecipe)
BARWRIGHT_EDIT(RemoveFrame)
BARWRIGHT_EDIT(PutPlane)
BARWRIGHT_EDIT(SetPlanePosition)
BARWRIGHT_EDIT(RemovePlane)
BARWRIGHT_EDIT(PutBay)
BARWRIGHT_EDIT(RemoveBay)
BARWRIGHT_EDIT(PutMember)
BARWRIGHT_EDIT(RemoveMember)
BARWRIGHT_EDIT(SetMemberStock)
BARWRIGHT_EDIT(PutDiagonal)
BARWRIGHT_EDIT(RemoveDiagonal)
BARWRIGHT_EDIT(PutLeaning)
BARWRIGHT_EDIT(RemoveLeaning)
BARWRIGHT_EDIT(PutJoint)
BARWRIGHT_EDIT(RemoveJoint)
BARWRIGHT_EDIT(PutPanel)
BARWRIGHT_EDIT(RemovePanel)
BARWRIGHT_EDIT(PutVents)
BARWRIGHT_EDIT(PutLoad)
BARWRIGHT_EDIT(RemoveLoad)
BARWRIGHT_EDIT(PutOpening)
BARWRIGHT_EDIT(RemoveOpening)
BARWRIGHT_EDIT(StartBoxFrame)
BARWRIGHT_EDIT(StartSteppedFrame)
BARWRIGHT_EDIT(FlipLegs)
BARWRIGHT_EDIT(TurnEndForEnd)
BARWRIGHT_EDIT(SplitMember)
BARWRIGHT_EDIT(JoinMembers)
BARWRIGHT_EDIT(MirrorBars)
BARWRIGHT_EDIT(RepeatBay)
BARWRIGHT_EDIT(CopyFrame)
BARWRIGHT_EDIT(TakeOutPlane)
BARWRIGHT_EDIT(TakeOutBay)
BARWRIGHT_EDIT(SurveyWheelWell)
BARWRIGHT_EDIT(SurveyWall)
BARWRIGHT_EDIT(StepOver)

#undef BARWRIGHT_EDIT

}  // namespace model
