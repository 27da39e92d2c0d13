package field

import "etchbound/schemas/quantity"

func key[T any](k Kind, name string, value func(*T) Value) Key[T] {
	return Key[T]{Field: Field{Key: name, Kind: k}, value: value}
}

// Words is a key that takes a text; one without a letter is not stated.
func Words[T any](name string, of func(*T) *string) Key[T] {
	return key(Text, name, func(t *T) Value { return words{of(t)} })
}

// OneOf is a key that takes one of the words of the schema.
func OneOf[T any](name string, of func(*T) *string) Key[T] {
	return key(Choice, name, func(t *T) Value { return words{of(t)} })
}

// Yes is a key that is true or false.
func Yes[T any](name string, of func(*T) **bool) Key[T] {
	return key(Flag, name, func(t *T) Value { return flag{of(t)} })
}

// Times is a key that takes a whole number; 0 is not stated.
func Times[T any](name string, of func(*T) *int) Key[T] {
	return key(Count, name, func(t *T) Value { return count{of(t)} })
}

// Plain is a key that takes a number; NaN is not stated.
func Plain[T any](name string, of func(*T) *float64) Key[T] {
	return key(Number, name, func(t *T) Value { return plain{of(t), ""} })
}

// In is a key that takes a number that is kept in a unit; NaN is not stated.
func In[T any](name string, of func(*T) (x *float64, unit string)) Key[T] {
	return key(Number, name, func(t *T) Value {
		x, unit := of(t)
		return plain{x, unit}
	})
}

// Maybe is a key that takes a number; nil is not stated.
func Maybe[T any](name string, of func(*T) **float64) Key[T] {
	return key(Number, name, func(t *T) Value { return maybe{of(t)} })
}

// Of is a key that takes a quantity, with a range if need be.
func Of[T any](name string, of func(*T) *quantity.Value) Key[T] {
	k := key(Quantity, name, func(t *T) Value { return Amount{of(t)} })
	k.Range = OfGiven
	return k
}

// ForDatum says that the quantity replaces a datum of a kind, range and all.
func (k Key[T]) ForDatum(kind string) Key[T] {
	k.Range, k.Datum = OfDatum, kind
	return k
}

// Exactly is a key that takes a quantity without a range.
func Exactly[T any](name string, of func(*T) *quantity.Value) Key[T] {
	return key(Quantity, name, func(t *T) Value { return Amount{of(t)} })
}

// Texts is a key that takes a list of texts.
func Texts[T any](name string, of func(*T) *[]string) Key[T] {
	return key(List, name, func(t *T) Value { return texts{of(t)} })
}

// Amounts is a key that takes a list of quantities.
func Amounts[T any](name string, of func(*T) *[]quantity.Value) Key[T] {
	return key(List, name, func(t *T) Value { return amounts{of(t)} })
}

// Custom is a key of any kind whose value is told in a way of its own.
func Custom[T any](k Kind, name string, of func(*T) Value) Key[T] { return key(k, name, of) }

// With adds a value to a key that holds maps, such as whether it was stated at all.
func (k Key[T]) With(of func(*T) Value) Key[T] {
	k.value = of
	return k
}

// Grows says how the key goes with the batch.
func (k Key[T]) Grows(s Scale) Key[T] {
	k.Scale = s
	return k
}

// IsFact marks the key as a Fact.
func (k Key[T]) IsFact() Key[T] {
	k.Fact = true
	return k
}

// NotListed keeps a change of the key out of the list of changes.
func (k Key[T]) NotListed(why string) Key[T] {
	k.Alone = why
	return k
}
