#include "model/project/project.h"

template class std::vector<model::BarAtSaw>;
template class std::vector<model::BarCut>;
template class std::vector<model::BarOffer>;
template class std::vector<model::Bay>;
template class std::vector<model::CutOut>;
template class std::vector<model::Diagonal>;
template class std::vector<model::Dimension>;
template class std::vector<model::Frame>;
template class std::vector<model::JointOverride>;
template class std::vector<model::Leaning>;
template class std::vector<model::Load>;
template class std::vector<model::MeasuredOpening>;
template class std::vector<model::Member>;
template class std::vector<model::Obstacle>;
template class std::vector<model::Offcut>;
template class std::vector<model::Panel>;
template class std::vector<model::Plane>;
template class std::vector<model::Stock>;
template class std::vector<model::Supplier>;
