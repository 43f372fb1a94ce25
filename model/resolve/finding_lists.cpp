#include "model/resolve/finding.h"

template class std::vector<model::Finding>;
template class std::vector<model::FindingNumber>;
template class std::vector<model::Subject>;
