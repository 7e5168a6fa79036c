namespace Graspwright.Hand;

/// <summary>Writes the sections about spares and computed lives.</summary>
internal static class DrawerWriter
{
    public static void Write(OutTable root, Drawer drawer)
    {
        OutTable t = root.Part("drawer");
        t.Quantity("period", drawer.PeriodSeconds);
        t.Quantity("supply", drawer.SupplySeconds);
        t.Quantity("chance", drawer.Chance);
        t.Quantity("unseen", drawer.Unseen);
        OutTable computed = root.Part("computed_lives");
        foreach (ComputedLife life in drawer.ComputedLives)
        {
            OutTable one = computed.Part(life.Part, always: true);
            one.Quantity("median", life.MedianSeconds);
            one.Quantity("low", life.LowSeconds);
            one.Quantity("high", life.HighSeconds);
        }
    }
}
