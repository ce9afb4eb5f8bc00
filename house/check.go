package house

// check looks for parts that contradict each other.
func (r *reader) check(f *File) {}
