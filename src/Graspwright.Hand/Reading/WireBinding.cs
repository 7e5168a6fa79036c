namespace Graspwright.Hand;

/// <summary>Binds wires over the liner.</summary>
internal static class WireBinding
{
    public static LimbWire Wire(string name, Binder t, IReadOnlyList<LimbPatch> patches)
    {
        LimbSpot from = Spot(t, "from", patches) ?? Missing(t, "from", patches), to = Spot(t, "to", patches) ?? Missing(t, "to", patches);
        return new(name, from, to, Spot(t, "via", patches), t.Quantity("clearance"), t.Quantity("slack"), t.Optional("diameter"), t.Quantity("least_bend"));
    }

    private static LimbSpot? Spot(Binder t, string key, IReadOnlyList<LimbPatch> patches)
    {
        (string place, string angle) = ($"{key}_place", $"{key}_angle");
        bool byPlace = t.Has(place), byAngle = t.Has(angle);
        if (t.Has(key))
        {
            string patch = t.Word(key);
            if (byPlace || byAngle)
            {
                t.Fault(t.PlaceOf(byPlace ? place : angle), byPlace ? place : angle, $"a second spot beside {key} = \"{patch}\"", $"either {key}, or {place} and {angle}", "remove the one that does not hold");
            }
            else if (patches.All(p => p.Name != patch))
            {
                t.Fault(t.PlaceOf(key), key, $"{patch}, which is no patch", patches.Count == 0 ? "a patch of [form.patches]; there is none" : string.Join(", ", patches.Select(p => p.Name)),
                    Nearest.To(patch, patches.Select(p => p.Name)) is { } near ? $"did you mean {near}?" : $"add it to [form.patches], or write {place} and {angle}");
            }

            return new(patch, 0, 0);
        }

        if (byPlace != byAngle)
        {
            t.Fault(t.PlaceOf(byPlace ? place : angle), byPlace ? angle : place, "nothing", $"{place} and {angle} together", "write both: the place along the limb and the angle from the back of the hand toward the thumb");
        }

        return byPlace || byAngle ? new(null, t.Optional(place) ?? 0, t.Optional(angle) ?? 0) : null;
    }

    private static LimbSpot Missing(Binder t, string key, IReadOnlyList<LimbPatch> patches)
    {
        t.Fault(t.Place, key, "nothing", $"a patch, or {key}_place and {key}_angle", patches.Count > 0 ? $"write {key} = \"{patches[0].Name}\"" : $"write {key}_place = \"-40 mm\" and {key}_angle = \"90 deg\"");
        return new(null, 0, 0);
    }
}
