using Graspwright.Hand;
using Graspwright.Moulding.Cure;

namespace Graspwright.Workshop.Mould;

/// <summary>One input of the clock with the range within which it is stated to lie.</summary>
/// <param name="Path">Path in the hand file.</param>
/// <param name="Words">What it is.</param>
/// <param name="Range">Value and range in SI.</param>
/// <param name="Set">Puts a value into the inputs.</param>
/// <param name="Show">The value in words.</param>
/// <param name="Stated">Whether the maker gave the range, under tolerances.</param>
internal sealed record ClockRange(string Path, string Words, StatedRange Range, Func<CureInputs, double, CureInputs> Set, Func<double, string> Show, bool Stated);

/// <summary>The ranges of the clock's inputs: the maker's tolerances, else what is thought of such values. None is fitted to anything.</summary>
internal static class ClockRanges
{
    public static IReadOnlyList<ClockRange> Of(HandModel hand, CureInputs x)
    {
        List<ClockRange> all = [];
        void Add(string path, string words, double value, double low, double high, Func<CureInputs, double, CureInputs> set, Func<double, string> show)
        {
            Tolerance? stated = hand.Tolerances.FirstOrDefault(t => t.Path == path);
            StatedRange range = stated is null ? new(value, Math.Min(low, value), Math.Max(high, value)) : new(value, value - stated.PlusMinus, value + stated.PlusMinus);
            all.Add(new(path, words, range, set, show, stated is not null));
        }

        void Share(string path, string words, double value, double share, Func<CureInputs, double, CureInputs> set, Func<double, string> show) =>
            Add(path, words, value, value * (1 - share), value * (1 + share), set, show);

        static string Percent(double v) => $"{MouldWords.Number(100 * v, 0)} %";
        static string Seconds(double v) => MouldWords.Clock(v);
        static string Degrees(double v) => $"{MouldWords.Number(v - MouldWords.Zero)} °C";
        static string Transfer(double v) => $"{MouldWords.Number(v, 0)} W/(m²·K)";
        Share("liner.putty.work_time", "work time of the label", x.WorkTime, 0.1, (c, v) => c with { WorkTime = v }, Seconds);
        Share("liner.putty.set_time", "set time of the label", x.SetTime, 0.1, (c, v) => c with { SetTime = v }, Seconds);
        if (x.LabelMixTime is { } mix)
        {
            Share("liner.putty.mix_time", "mixing time of the label", mix, 0.1, (c, v) => c with { LabelMixTime = v }, Seconds);
        }
        else
        {
            Add("liner.putty.mix_share", "share of the work time for mixing", x.MixShare, 0.3, 0.5, (c, v) => c with { MixShare = v }, Percent);
        }

        if (x.FullTime is { } full)
        {
            Share("liner.putty.full_time", "full cure of the label", full, 0.1, (c, v) => c with { FullTime = Math.Max(v, c.SetTime) }, Seconds);
        }
        else
        {
            Add("liner.putty.cure_at_set", "bonds made at the set time", x.CureAtSet, 0.8, 0.95, (c, v) => c with { CureAtSet = v }, Percent);
        }

        Add("liner.putty.at", "temperature of the label", x.LabelTemperature, x.LabelTemperature - 2, x.LabelTemperature + 2, (c, v) => c with { LabelTemperature = v }, Degrees);
        Add("liner.putty.ten_degree_factor", "factor for ten degrees", x.TenDegreeFactor, 1.5, 3, (c, v) => c with { TenDegreeFactor = v }, v => MouldWords.Number(v, 2));
        Add("liner.putty.hands_off_share", "how far on it may be touched", x.HandsOffShare, 0.2, 0.6, (c, v) => c with { HandsOffShare = v }, Percent);
        Add("liner.putty.conductivity", "conductivity", x.Conductivity, 0.15, 0.4, (c, v) => c with { Conductivity = v }, v => $"{MouldWords.Number(v, 2)} W/(m·K)");
        Add("liner.putty.specific_heat", "specific heat", x.SpecificHeat, 1200, 1500, (c, v) => c with { SpecificHeat = v }, v => $"{MouldWords.Number(v, 0)} J/(kg·K)");
        Add("liner.bench.room", "room", x.Room, x.Room - 1, x.Room + 1, (c, v) => c with { Room = v }, Degrees);
        Add("liner.bench.mould", "mould", x.Mould, x.Mould - 2, x.Mould + 2, (c, v) => c with { Mould = v }, Degrees);
        Add("liner.bench.hand", "skin of the hands", x.Hand, x.Hand - 3, x.Hand + 2, (c, v) => c with { Hand = v }, Degrees);
        Add("liner.bench.air_transfer", "heat transfer to air", x.AirTransfer, 5, 12, (c, v) => c with { AirTransfer = v }, Transfer);
        Add("liner.bench.hand_transfer", "heat transfer to the hand", x.HandTransfer, 40, 300, (c, v) => c with { HandTransfer = v }, Transfer);
        Add("liner.bench.contact_transfer", "heat transfer to table and mould", x.ContactTransfer, 40, 300, (c, v) => c with { ContactTransfer = v }, Transfer);
        Add("liner.bench.hand_share", "share of the ball under the hands", x.HandShare, 0.25, 0.6, (c, v) => c with { HandShare = v }, Percent);
        Add("liner.bench.working_share", "share of the sheet under the hands", x.WorkingShare, 0.1, 0.5, (c, v) => c with { WorkingShare = v }, Percent);
        if (x.Chill > 0)
        {
            Add("liner.bench.freezer", "freezer", x.Freezer, x.Freezer - 3, x.Freezer + 3, (c, v) => c with { Freezer = v }, Degrees);
            Add("liner.bench.freezer_transfer", "heat transfer in the freezer", x.FreezerTransfer, 5, 15, (c, v) => c with { FreezerTransfer = v }, Transfer);
            Add("liner.bench.carry", "time from the freezer to mixing", x.Carry, Math.Max(0, x.Carry - 20), x.Carry + 20, (c, v) => c with { Carry = v }, Seconds);
        }

        return all;
    }

    /// <summary>The clock as a calculation on those inputs, giving the seconds of its five moments.</summary>
    public static Func<double[], double[]> Model(IReadOnlyList<ClockRange> ranges, CureInputs x) => values =>
    {
        CureInputs changed = x with { DewPoint = null };
        for (int i = 0; i < values.Length; i++)
        {
            changed = values[i] == ranges[i].Range.Value ? changed : ranges[i].Set(changed, values[i]);
        }

        return [.. CureClock.Run(Sound(changed)).Moments.Select(m => m.Seconds)];
    };

    // A range may push the work time beyond the set time of a label that has them close together.
    private static CureInputs Sound(CureInputs x)
    {
        double set = Math.Max(x.SetTime, x.WorkTime * 1.001);
        return x with { SetTime = set, FullTime = x.FullTime is { } full ? Math.Max(full, set) : null };
    }
}
