package cli

import "suffice/house"

type schemaVerb struct{}

func (schemaVerb) Help() string {
	return `An editor that is pointed to it offers the keys of a house file, with what they mean and
their defaults, and underlines what is misspelt. It sees less than suffice check does: not
the units, and not what two values say against each other.

Examples:
  suffice schema > house.schema.json`
}

func (schemaVerb) Run(s Streams) error {
	_, err := s.Out.Write(house.Schema())
	return err
}
