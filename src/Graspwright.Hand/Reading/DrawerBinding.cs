namespace Graspwright.Hand;

/// <summary>Binds what the file says about spares and computed lives.</summary>
internal static class DrawerBinding
{
    public static Drawer Bind(Binder root, BindingRun run)
    {
        Binder t = root.Part("drawer");
        Drawer drawer = new()
        {
            PeriodSeconds = t.Quantity("period"),
            SupplySeconds = t.Quantity("supply"),
            Chance = t.Quantity("chance"),
            Unseen = t.Quantity("unseen"),
            ComputedLives = [.. root.Part("computed_lives").NamedParts().Select(p => Life(p.Name, p.Part))],
        };
        return drawer with { Guesses = [.. run.Guesses] };
    }

    private static ComputedLife Life(string name, Binder t)
    {
        ComputedLife life = new(name, t.Quantity("median"), t.Quantity("low"), t.Quantity("high"));
        if (life.LowSeconds >= life.MedianSeconds || life.HighSeconds <= life.MedianSeconds)
        {
            string key = life.LowSeconds >= life.MedianSeconds ? "low" : "high";
            t.Fault(t.PlaceOf(key), key, "a band that does not hold the median", "low below median, high above it", "write the three in order: low, median, high");
        }

        return life;
    }
}
