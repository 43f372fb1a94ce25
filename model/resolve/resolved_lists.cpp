#include "model/resolve/resolved.h"

template class std::vector<model::ResolvedPlane>;
template class std::vector<model::ResolvedFrame>;
template class std::vector<model::Piece>;
template class std::vector<model::Outline>;
template class std::vector<model::Lean>;
template class std::vector<model::Joint>;
template class std::vector<model::Fastener>;
template class std::vector<model::Hole>;
template class std::vector<model::ClearOpening>;
template class std::vector<model::Mark>;
