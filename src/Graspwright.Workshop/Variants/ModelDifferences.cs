using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;

namespace Graspwright.Workshop.Variants;

/// <summary>One place of a hand's records where two hands differ, and what the other has there.</summary>
/// <param name="Steps">Properties (<see cref="PropertyInfo"/>) and places in lists (<see cref="int"/>) from the hand down.</param>
/// <param name="Value">What the other hand has there: a number, a word, or a whole part.</param>
public sealed record ModelDifference(IReadOnlyList<object> Steps, object? Value)
{
    /// <summary>The place as text, to compare places by.</summary>
    public string Place => string.Concat(Steps.Select(s => s is PropertyInfo p ? "." + p.Name : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"[{s}]"))) + ".";

    /// <summary>Whether one place is, or lies within, the other.</summary>
    /// <param name="other">The other place.</param>
    public bool Meets(ModelDifference other) => Place.StartsWith(other.Place, StringComparison.Ordinal) || other.Place.StartsWith(Place, StringComparison.Ordinal);
}

/// <summary>Finds where two hands differ, value by value, and puts values into a hand without going through its file.</summary>
/// <remarks>
/// The hand file's records are walked as they are, so that every key the file knows is covered, those of later sections
/// too. Guesses and decisions are no part of the hand itself and are passed over.
/// </remarks>
public static class ModelDifferences
{
    private static readonly string[] NoPartOfTheHand = ["Guesses", "Decisions"];
    private static readonly ConcurrentDictionary<Type, Shape> Shapes = [];

    /// <summary>Every place where two hands differ.</summary>
    /// <param name="one">The one.</param>
    /// <param name="other">The other, whose values are given.</param>
    public static IReadOnlyList<ModelDifference> Between(Hand.HandModel one, Hand.HandModel other)
    {
        List<ModelDifference> found = [];
        Compare(one, other, [], found);
        return found;
    }

    /// <summary>The hand with values put into some places.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="places">Places and values; of places that meet, the last wins.</param>
    public static Hand.HandModel With(Hand.HandModel hand, IReadOnlyList<ModelDifference> places)
    {
        object root = hand;
        return places.Count == 0 ? hand : (Hand.HandModel)Put(root, places, 0)!;
    }

    /// <summary>What a hand has at a place; <see langword="null"/> where it has no such place.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="steps">Steps of the place.</param>
    public static object? At(Hand.HandModel hand, IReadOnlyList<object> steps)
    {
        object? at = hand;
        foreach (object step in steps)
        {
            at = (at, step) switch
            {
                (IList list, int index) when index < list.Count => list[index],
                (not null, PropertyInfo property) when property.DeclaringType!.IsInstanceOfType(at) => property.GetValue(at),
                _ => null,
            };
        }

        return at;
    }

    private static void Compare(object? one, object? other, IReadOnlyList<object> at, List<ModelDifference> found)
    {
        if (one is null || other is null || one.GetType() != other.GetType() || Leaf(one))
        {
            if (!(one is IList { Count: var n } && other is IList { Count: var m } && n == m) && !Equals(one, other))
            {
                found.Add(new(at, other));
                return;
            }

            if (one is not IList || other is not IList)
            {
                return;
            }
        }

        if (one is IList list && other is IList others)
        {
            if (list.Count != others.Count)
            {
                found.Add(new(at, other));
                return;
            }

            for (int i = 0; i < list.Count; i++)
            {
                Compare(list[i], others[i], [.. at, i], found);
            }

            return;
        }

        foreach (PropertyInfo property in ShapeOf(one.GetType()).Properties)
        {
            Compare(property.GetValue(one), property.GetValue(other), [.. at, property], found);
        }
    }

    private static object? Put(object? into, IReadOnlyList<ModelDifference> places, int depth)
    {
        foreach (ModelDifference place in places)
        {
            if (place.Steps.Count == depth)
            {
                return places[^1].Steps.Count == depth ? places[^1].Value : Put(place.Value, [.. places.Where(p => p.Steps.Count > depth)], depth);
            }
        }

        object copy = into is IList list ? Copy(list) : ShapeOf(into!.GetType()).Copy(into);
        foreach (IGrouping<object, ModelDifference> below in places.GroupBy(p => p.Steps[depth]))
        {
            IReadOnlyList<ModelDifference> inner = [.. below];
            if (below.Key is int index)
            {
                ((Array)copy).SetValue(Put(((IList)into)[index], inner, depth + 1), index);
            }
            else
            {
                PropertyInfo property = (PropertyInfo)below.Key;
                property.SetValue(copy, Put(property.GetValue(into), inner, depth + 1));
            }
        }

        return copy;
    }

    private static bool Leaf(object value) => value is string || value.GetType().IsPrimitive || value.GetType().IsEnum || (value is not IList && ShapeOf(value.GetType()).Properties.Count == 0);

    private static Array Copy(IList list)
    {
        Type element = list.GetType().GetInterfaces().First(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IReadOnlyList<>)).GetGenericArguments()[0];
        Array copy = Array.CreateInstance(element, list.Count);
        list.CopyTo(copy, 0);
        return copy;
    }

    private static Shape ShapeOf(Type type) => Shapes.GetOrAdd(type, t => new(t));

    /// <summary>What may be set in a record, and how it is copied.</summary>
    internal sealed class Shape
    {
        private readonly MethodInfo? _clone;

        public Shape(Type type)
        {
            _clone = type.GetMethod("<Clone>$");
            bool copies = _clone is not null || type.IsValueType;
            Properties = !copies ? [] : [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p is { CanRead: true, CanWrite: true } && p.GetIndexParameters().Length == 0 && !NoPartOfTheHand.Contains(p.Name))];
        }

        public IReadOnlyList<PropertyInfo> Properties { get; }

        public object Copy(object value) => _clone is not null ? _clone.Invoke(value, null)! : value;
    }
}
