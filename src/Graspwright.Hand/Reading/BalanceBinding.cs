namespace Graspwright.Hand;

/// <summary>Binds the balance tree and checks that it carries each finger once.</summary>
internal sealed class BalanceBinding(Binder root, IReadOnlyList<Finger> fingers)
{
    private const double LeastArm = 1e-4; // a tenth of a millimetre: no bar has a shorter arm

    private readonly Dictionary<string, double> _across = Places(fingers);
    private readonly HashSet<string> _carried = new(StringComparer.Ordinal);
    private readonly HashSet<string> _barNames = new(StringComparer.Ordinal);

    private static Dictionary<string, double> Places(IReadOnlyList<Finger> fingers)
    {
        Dictionary<string, double> across = new(StringComparer.Ordinal);
        foreach (Finger finger in fingers)
        {
            across.TryAdd(finger.Name, finger.Across);
        }

        return across;
    }

    public BalanceNode Bind()
    {
        if (!root.Has("balance"))
        {
            if (fingers.Count > 0)
            {
                root.Guess("balance", "neighbours paired, then the pairs", "workshop-choice");
            }

            if (Bars(fingers).Any(half => half < LeastArm))
            {
                root.Fault(root.Place, "balance", "fingers at the same place across the hand", "fingers that lie apart, or a balance tree with its arms", "check across, or add [balance] with first_arm and second_arm");
            }

            return Pairs(fingers, "root");
        }

        BalanceNode tree = Node(root, "balance", "root").Node;
        foreach (Finger missing in fingers.Where(f => !_carried.Contains(f.Name)))
        {
            root.Fault(root.PlaceOf("balance"), "balance", $"no end that carries {missing.Name}", "each finger once", $"add first = \"{missing.Name}\" to a bar, or remove the finger");
        }

        return tree;
    }

    private (BalanceNode Node, double Across) Node(Binder parent, string key, string name)
    {
        Node? node = parent.Node(key);
        if (node is TableNode)
        {
            return Bar(parent.Part(key), name);
        }

        string finger = node is TextNode text ? text.Text : "";
        if (node is null)
        {
            parent.Fault(parent.Place, key, "nothing", "the name of a finger, or a table for a further bar", $"add {key} = \"index\" to [{parent.Path}]");
        }
        else if (node is TextNode && !_across.ContainsKey(finger))
        {
            string near = Nearest.To(finger, _across.Keys) is { } close ? $"did you mean {close}?" : $"add a section [fingers.{finger}] or use one of these";
            parent.Fault(node.Place, key, $"\"{finger}\", which is no finger", string.Join(", ", _across.Keys), near);
        }
        else if (node is TextNode && !_carried.Add(finger))
        {
            parent.Fault(node.Place, key, $"\"{finger}\" a second time", "each finger once", "name another finger here");
        }

        return (new FingerLeaf(finger), _across.GetValueOrDefault(finger, double.NaN));
    }

    private (BalanceNode Node, double Across) Bar(Binder t, string given)
    {
        string name = t.Word("name", Toml.Text(given));
        if (!_barNames.Add(name))
        {
            t.Fault(t.PlaceOf("name"), "name", $"a second bar called {name}", "each bar with a name of its own", "give this bar another name");
        }

        (BalanceNode first, double firstAcross) = Node(t, "first", name + " first");
        (BalanceNode second, double secondAcross) = Node(t, "second", name + " second");
        double half = Math.Abs(firstAcross - secondAcross) / 2;
        bool armsNeeded = !t.Has("first_arm") || !t.Has("second_arm");
        if (armsNeeded && half < LeastArm)
        {
            t.Fault(t.Place, "first_arm", "two ends at the same place across the hand", "ends that lie apart, or arms that the file gives",
                "this pairing needs stacked or unequal bars: add first_arm and second_arm");
        }

        string derived = Toml.Quantity(half >= LeastArm ? half : double.NaN, Dimension.Length);
        double firstArm = t.Quantity("first_arm", derived), secondArm = t.Quantity("second_arm", derived);
        BalanceBar bar = new()
        {
            Name = name,
            FirstArm = firstArm,
            SecondArm = secondArm,
            TiltStopRadians = t.Quantity("tilt_stop"),
            First = first,
            Second = second,
            PivotPin = t.Pin("pivot_pin"),
            FirstPinRadius = t.Quantity("first_pin_radius"),
            SecondPinRadius = t.Quantity("second_pin_radius"),
        };
        return (bar, (firstAcross * secondArm + secondAcross * firstArm) / (firstArm + secondArm));
    }

    /// <summary>Neighbours paired, then the pairs; every bar of equal arms, tilt stop as the key's default.</summary>
    public static BalanceNode Pairs(IReadOnlyList<Finger> some, string name)
    {
        if (some.Count <= 1)
        {
            return new FingerLeaf(some.Count == 1 ? some[0].Name : "");
        }

        int left = (some.Count + 1) / 2;
        Finger[] first = [.. some.Take(left)], second = [.. some.Skip(left)];
        double arm = HalfDistance(first, second);
        HandKey stop = HandPath.Describe([new("balance", 0), new("tilt_stop", 0)])!;
        return new BalanceBar
        {
            Name = name,
            FirstArm = arm,
            SecondArm = arm,
            TiltStopRadians = ValueReading.Quantity(stop, Toml.Value(stop.Default!), "", null),
            First = Pairs(first, name + " first"),
            Second = Pairs(second, name + " second"),
        };
    }

    private static IEnumerable<double> Bars(IReadOnlyList<Finger> some)
    {
        int left = (some.Count + 1) / 2;
        Finger[] first = [.. some.Take(left)], second = [.. some.Skip(left)];
        return some.Count <= 1 ? [] : [HalfDistance(first, second), .. Bars(first), .. Bars(second)];
    }

    private static double HalfDistance(Finger[] first, Finger[] second) => Math.Abs(first.Average(f => f.Across) - second.Average(f => f.Across)) / 2;
}
