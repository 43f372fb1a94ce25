// One function for each edit. Each changes the project in place and is called on a copy, so it may
// return at the first fault. Only files of this folder use it.
#pragma once

#include "model/project/edit.h"

namespace model {

using Changed = engine::Result<engine::Done>;

Changed change(Project& project, const SetTitle& edit);
Changed change(Project& project, const SetShown& edit);
Changed change(Project& project, const SetShop& edit);
Changed change(Project& project, const PutDimension& edit);
Changed change(Project& project, const SetFormula& edit);
Changed change(Project& project, const RemoveDimension& edit);
Changed change(Project& project, const PutStock& edit);
Changed change(Project& project, const RemoveStock& edit);
Changed change(Project& project, const PutObstacle& edit);
Changed change(Project& project, const RemoveObstacle& edit);
Changed change(Project& project, const KeepBars& edit);
Changed change(Project& project, const PutSupplier& edit);
Changed change(Project& project, const RemoveSupplier& edit);
Changed change(Project& project, const NotePurchase& edit);
Changed change(Project& project, const TakePurchaseBack& edit);
Changed change(Project& project, const PutFrame& edit);
Changed change(Project& project, const PlaceFrame& edit);
Changed change(Project& project, const SetFrameRecipe& edit);
Changed change(Project& project, const RemoveFrame& edit);
Changed change(Project& project, const PutPlane& edit);
Changed change(Project& project, const SetPlanePosition& edit);
Changed change(Project& project, const RemovePlane& edit);
Changed change(Project& project, const PutBay& edit);
Changed change(Project& project, const RemoveBay& edit);
Changed change(Project& project, const PutMember& edit);
Changed change(Project& project, const RemoveMember& edit);
Changed change(Project& project, const SetMemberStock& edit);
Changed change(Project& project, const PutDiagonal& edit);
Changed change(Project& project, const RemoveDiagonal& edit);
Changed change(Project& project, const PutLeaning& edit);
Changed change(Project& project, const RemoveLeaning& edit);
Changed change(Project& project, const PutJoint& edit);
Changed change(Project& project, const RemoveJoint& edit);
Changed change(Project& project, const PutPanel& edit);
Changed change(Project& project, const RemovePanel& edit);
Changed change(Project& project, const PutVents& edit);
Changed change(Project& project, const PutLoad& edit);
Changed change(Project& project, const RemoveLoad& edit);
Changed change(Project& project, const PutOpening& edit);
Changed change(Project& project, const RemoveOpening& edit);
Changed change(Project& project, const StartBoxFrame& edit);
Changed change(Project& project, const StartSteppedFrame& edit);
Changed change(Project& project, const FlipLegs& edit);
Changed change(Project& project, const TurnEndForEnd& edit);
Changed change(Project& project, const SplitMember& edit);
Changed change(Project& project, const JoinMembers& edit);
Changed change(Project& project, const MirrorBars& edit);
Changed change(Project& project, const RepeatBay& edit);
Changed change(Project& project, const CopyFrame& edit);
Changed change(Project& project, const TakeOutPlane& edit);
Changed change(Project& project, const TakeOutBay& edit);
Changed change(Project& project, const SurveyWheelWell& edit);
Changed change(Project& project, const SurveyWall& edit);
Changed change(Project& project, const StepOver& edit);

}  // namespace model
