package house

import "suffice/quantity"

// A Section is the earth behind and under a room, drawn as a cut from the garden in front to the slope behind.
type Section struct {
	Long       quantity.Metres  `key:"length" needs:"yes" unit:"m" least:"1 m" most:"200 m" example:"10 m" says:"of the room along the slope: its back wall's"`
	Floor      quantity.Metres  `key:"floor" default:"0 m" source:"the plainest reading of a house on the ground" unit:"m" least:"-10 m" most:"5 m" example:"-0.5 m" says:"height of the floor over the garden in front, below 0 m where it is sunk"`
	Berm       *quantity.Metres `key:"berm" unit:"m" least:"-10 m" most:"20 m" example:"2.6 m" says:"height of the earth against the back wall, over the garden; left out, that of the whole wall which faces earth"`
	Crest      quantity.Metres  `key:"crest" default:"1 m" source:"common practice, no source" unit:"m" least:"0 m" most:"50 m" example:"1 m" says:"level earth behind the top of the back wall"`
	Slope      quantity.Degrees `key:"slope" default:"20 deg" source:"common practice, no source" unit:"deg" least:"1 deg" most:"60 deg" example:"20 deg" says:"of the ground behind that"`
	Behind     *quantity.Metres `key:"behind" unit:"m" least:"-10 m" most:"50 m" example:"5 m" says:"height of the ground far behind, over the garden; left out, as high as the berm, without a slope"`
	Foot       Layers           `key:"foot" needs:"yes" example:"45 cm reclaimed stone" says:"of the front wall below the garden, from inside to outside"`
	Foundation quantity.Metres  `key:"foundation" default:"0.5 m" source:"common practice, no source" unit:"m" least:"0 m" most:"5 m" example:"0.5 m" says:"how deep that foot reaches below the garden"`
	Umbrella   Layers           `key:"umbrella" example:"10 cm foam glass gravel" says:"insulation laid level into the berm, from the back wall outward: one layer"`
	Under      quantity.Metres  `key:"umbrella_depth" default:"0.4 m" source:"what grass wants above it, common practice, no source" unit:"m" least:"0 m" most:"5 m" example:"0.4 m" says:"how deep it lies under the berm's top"`
	Out        quantity.Metres  `key:"umbrella_length" default:"2 m" source:"common practice, no source" unit:"m" least:"0.1 m" most:"20 m" example:"2 m" says:"how far out it reaches"`
	Cover      string           `key:"cover" default:"grass" source:"the plainest ground" choices:"grass|bare" example:"grass" says:"what grows on slope and garden: grass that nobody waters, or nothing"`
	Earth      *string          `key:"earth" choices:"clay or silt|sand or gravel|rock|dry clay|wet clay|dry sand|moist sand|wet sand" example:"wet clay" says:"of slope and ground: a wet one where nothing drains the back wall; left out, that of site"`
	Garden     quantity.Metres  `key:"garden" default:"12 m" source:"some widths of a house: iso10211 takes two and a half" unit:"m" least:"2 m" most:"100 m" example:"12 m" says:"how far in front the earth is computed"`
	Deep       quantity.Metres  `key:"deep" default:"12 m" source:"the same, and five times the depth that a year's swing reaches" unit:"m" least:"2 m" most:"100 m" example:"12 m" says:"how deep below the garden"`
	Beyond     quantity.Metres  `key:"beyond" default:"10 m" source:"the same" unit:"m" least:"2 m" most:"100 m" example:"10 m" says:"how far behind the slope"`
}
