using Graspwright.Form.Tape;
using Graspwright.Hand;
using Graspwright.Moulding.Batch;
using Graspwright.Moulding.ComingOff;
using Graspwright.Moulding.Cure;
using Graspwright.Moulding.Heat;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Mould;

/// <summary>The sheet of a liner as the engine takes it.</summary>
/// <param name="Area">Area, both edges as measured [m²].</param>
/// <param name="Seam">Length of the seam along the limb [m].</param>
/// <param name="Girth">Mean girth of the sheet [m].</param>
/// <param name="Outline">Outline laid flat; empty for a plain sheet.</param>
/// <param name="From">Where the area comes from, in words.</param>
internal sealed record LinerSheet(double Area, double Seam, double Girth, IReadOnlyList<(double Place, double Along, double Width)> Outline, string From);

/// <summary>Maps a hand to the inputs of the moulding engine.</summary>
internal static class MouldMapping
{
    /// <summary>What is missing for a question.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Name of its file.</param>
    /// <param name="liner">Whether the liner is needed.</param>
    /// <param name="form">Whether the limb's form is needed.</param>
    /// <param name="copies">Whether the copies are needed.</param>
    public static IReadOnlyList<InputError> Missing(HandModel hand, string file, bool liner = false, bool form = false, bool copies = false)
    {
        List<InputError> errors = [];
        if (liner && hand.Liner is null)
        {
            errors.Add(new(file, 0, 0, "liner", "no liner", "a section [liner.putty] with the label of the tub", "copy it from the tub: work_time = \"4 min\", set_time = \"12 min\", at = \"23 °C\""));
        }

        if (form && hand.Form is null)
        {
            errors.Add(new(file, 0, 0, "form", "no form", "a section [form.marks] with two marks or more", "measure girths along the limb and add wrist = { place = \"0 mm\", girth = \"172 mm\" } to [form.marks]"));
        }

        if (copies && hand.Copies is null)
        {
            errors.Add(new(file, 0, 0, "copies", "no copies", "a section [copies]", "add [copies]; an empty one takes the defaults"));
        }

        if (liner && hand is { Liner: { SheetArea: null, SheetLength: null }, Form: null })
        {
            errors.Add(new(file, 0, 0, "liner.sheet_area", "no size of the sheet", "sheet_area, sheet_length with sheet_width, or tape marks in [form.marks]", "measure the sheet, or the girths along the limb"));
        }

        return errors;
    }

    public static Girths Girths(LimbForm form) => new([.. form.Marks.Select(m => m.Place)], [.. form.Marks.Select(m => m.Girth)]);

    public static TapeForm Form(LimbForm form) => new(Marks(form));

    public static IReadOnlyList<TapeMark> Marks(LimbForm form) => [.. form.Marks.Select(m => new TapeMark(m.Place, m.Girth, m.Width ?? double.NaN, m.Depth ?? double.NaN))];

    public static LinerSheet Sheet(HandModel hand)
    {
        Liner liner = hand.Liner!;
        if (liner.SheetArea is { } area)
        {
            double side = Math.Sqrt(area);
            return new(area, side, side, [], "as the file gives it");
        }

        if (liner is { SheetLength: { } length, SheetWidth: { } width })
        {
            return new(length * width, length, width, [], "length times width");
        }

        LimbForm form = hand.Form!;
        IReadOnlyList<(double Place, double Along, double Width)> outline = Form(form).Outline(form.NearEdge, form.FarEdge, liner.Thickness, liner.Overlap);
        double thumb = form.Thumb is { } t ? t.Length * (Math.Max(t.Root, t.Largest) + Math.PI * liner.Thickness + liner.Overlap) : 0;
        double sheet = TapeForm.Area(outline);
        return new(sheet + thumb, outline[^1].Along + (form.Thumb?.Length ?? 0), sheet / outline[^1].Along, outline, form.Thumb is null ? "from the tape marks" : "from the tape marks, thumb included");
    }

    public static BatchInputs Batch(Liner liner, double area) => new()
    {
        Area = area,
        Thickness = liner.Thickness,
        Waste = liner.Waste,
        Spare = liner.Spare,
        RatioA = liner.Putty.RatioA,
        RatioB = liner.Putty.RatioB,
        DensityA = liner.Putty.DensityA,
        DensityB = liner.Putty.DensityB,
        ScaleStep = liner.Bench.ScaleStep,
    };

    public static WorkRates Rates(PuttyWork work) => new(work.Mix, work.Roll / 0.01, work.Drape / 0.01, work.Seams / 0.1, work.Hollow, work.Smooth / 0.01);

    public static CureInputs Cure(Liner liner, BatchSum batch)
    {
        PuttyLabel p = liner.Putty;
        PuttyBench b = liner.Bench;
        double area = batch.SheetVolume / liner.Thickness;
        return new()
        {
            WorkTime = p.WorkTime,
            SetTime = p.SetTime,
            LabelMixTime = p.MixTime,
            FullTime = p.FullTime,
            LabelTemperature = p.At,
            Rule = p.Arrhenius ? CureRule.Arrhenius : CureRule.TenDegrees,
            TenDegreeFactor = p.TenDegreeFactor,
            MixShare = p.MixShare,
            HandsOffShare = p.HandsOffShare,
            CureAtSet = p.CureAtSet,
            Conductivity = p.Conductivity,
            SpecificHeat = p.SpecificHeat,
            Density = batch.Density,
            Mass = batch.Mass,
            GreaterPart = Math.Max(batch.A.Mass, batch.B.Mass) / batch.Mass,
            Thickness = liner.Thickness,
            Room = b.Room,
            Mould = b.Mould,
            Hand = b.Hand,
            Freezer = b.Freezer,
            Chill = b.Chill,
            Shape = b.ChilledAs switch { ChilledAs.Ball => ChillShape.Ball, ChilledAs.Tub => ChillShape.Tub, _ => ChillShape.Sheet },
            FlatThickness = b.FlatThickness,
            Carry = b.Chill > 0 ? b.Carry : 0,
            DewPoint = Dew.Point(b.Room, b.Humidity),
            AirTransfer = b.AirTransfer,
            FreezerTransfer = b.FreezerTransfer,
            HandTransfer = b.HandTransfer,
            ContactTransfer = b.ContactTransfer,
            HandShare = b.HandShare,
            WorkingShare = b.WorkingShare,
            MixSeconds = liner.Work.Mix,
            RollSeconds = liner.Work.Roll / 0.01 * area / (1 + b.Helpers),
        };
    }

    public static IReadOnlyList<Patch> Patches(LimbForm form) => [.. form.Patches.Select(p => new Patch(p.Name, p.From, p.To, p.AngleFromRadians, p.AngleToRadians))];
}
