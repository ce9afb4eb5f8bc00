package water

// A Surface is a published share of the rain that a surface sheds (runoff or yield
// coefficient). Low and High are the printed range, or both Usual where one figure is printed.
type Surface struct {
	Name   string
	Low    float64
	Usual  float64 // the printed figure, or the middle of the printed range
	High   float64
	Source string // key in SOURCES.md
	Stands string // "seen", "quoted" or "remembered"
}

// Surfaces gives the published coefficients, several sources side by side: they do not agree,
// because some count wetting and some splash over the gutter.
func Surfaces() []Surface {
	return []Surface{
		{"pitched smooth", 0.9, 0.9, 0.9, "en16941-1", "remembered"},
		{"pitched rough", 0.8, 0.8, 0.8, "en16941-1", "remembered"},
		{"flat without gravel", 0.8, 0.8, 0.8, "en16941-1", "remembered"},
		{"flat with gravel", 0.7, 0.7, 0.7, "en16941-1", "remembered"},
		{"green extensive", 0.5, 0.5, 0.5, "en16941-1", "remembered"},
		{"green intensive", 0.3, 0.3, 0.3, "en16941-1", "remembered"},
		{"sealed yard", 0.8, 0.8, 0.8, "en16941-1", "remembered"},
		{"unsealed yard", 0.5, 0.5, 0.5, "en16941-1", "remembered"},
		{"metal", 0.9, 0.9, 1.0, "gould-catchment", "remembered"},
		{"glazed tile", 0.6, 0.75, 0.9, "gould-catchment", "remembered"},
		{"fibre cement", 0.8, 0.85, 0.9, "gould-catchment", "remembered"},
		{"thatch", 0.2, 0.2, 0.2, "gould-catchment", "remembered"},
		{"any roof", 0.5, 0.7, 0.9, "rwh-lesson-demand", "seen"},
		{"clay or concrete tile", 0.9, 0.9, 0.9, "texas-rainwater", "quoted"},
		{"roof", 0.85, 0.85, 0.85, "india-school-audit", "seen"},
		{"paved", 0.7, 0.7, 0.7, "india-school-audit", "seen"},
		{"unpaved", 0.3, 0.3, 0.3, "india-school-audit", "seen"},
	}
}

// FilterEfficiency is the share that passes a filter in the downpipe when nothing better is
// known [en16941-1; remembered, and seen as quoted].
const FilterEfficiency = 0.9
