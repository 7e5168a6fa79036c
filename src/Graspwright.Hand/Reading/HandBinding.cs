namespace Graspwright.Hand;

/// <summary>Binds a whole file to the model.</summary>
internal static class HandBinding
{
    public static HandModel Bind(HandSource source, Faults faults)
    {
        BindingRun run = new(faults);
        Binder root = new(run, source.Root, null, HandKeys.Root, "", source.Root.Place);
        Binder wearer = root.Part("wearer");
        Rail rail = DriveBinding.Rail(root.Part("rail"));
        double breadth = wearer.Quantity("hand_breadth");
        IReadOnlyList<Finger> fingers = FingerBinding.Bind(root.Part("fingers"), breadth, rail.DirectionRadians);
        IReadOnlyList<HandObject> objects = HeldThingsBinding.Objects(root.Part("objects"));
        BindingRun ofStructure = new(faults), ofDrawer = new(faults);
        Binder palm = root.Part("palm"), friction = root.Part("friction");
        HandModel hand = new()
        {
            Name = root.Word("name"),
            Description = root.Word("description"),
            Side = wearer.Choice<Side>("side"),
            HandBreadth = breadth,
            Wrist = DriveBinding.Wrist(root.Part("wrist")),
            Give = DriveBinding.Give(root.Part("give")),
            Gimbal = root.OptionalPart("gimbal") is { } g ? new(g.Pin("pin"), g.Point("offset")) : null,
            Palm = new(palm.Point("point"), palm.Quantity("direction")),
            PullLink = DriveBinding.PullLink(root.Part("pull_link")),
            Crank = DriveBinding.Crank(root.Part("crank")),
            TransferLink = DriveBinding.TransferLink(root.Part("transfer_link")),
            Rail = rail,
            Balance = new BalanceBinding(root, fingers).Bind(),
            Fingers = fingers,
            Friction = new()
            {
                Pin = friction.Quantity("pin"),
                Rail = friction.Quantity("rail"),
                Slot = friction.Quantity("slot"),
                Guide = friction.Quantity("guide"),
            },
            Locks = HeldThingsBinding.Locks(root.Part("locks"), fingers),
            Objects = objects,
            Structure = StructureBinding.Bind(new(ofStructure, source.Root, null, HandKeys.Root, "", source.Root.Place), fingers, objects, ofStructure),
            Drawer = DrawerBinding.Bind(new(ofDrawer, source.Root, null, HandKeys.Root, "", source.Root.Place), ofDrawer),
            Signals = root.OptionalPart("signals") is { } signals ? SignalsBinding.Bind(signals) : null,
            Tolerances = HeldThingsBinding.Tolerances(root.Part("tolerances"), fingers, objects),
            Files = HeldThingsBinding.Files(root.Part("files")),
        };
        DriveBinding.CheckTogether(root, hand.PullLink, hand.Crank, hand.Rail);
        hand = Day(root, hand);
        hand = hand with { Form = MouldBinding.Form(root), Liner = MouldBinding.Liner(root), Copies = MouldBinding.Copies(root) };
        return hand with { Guesses = Together(run.Guesses, fingers.Count) };
    }

    private static HandModel Day(Binder root, HandModel hand)
    {
        IReadOnlyList<Job> jobs = DayBinding.Jobs(root.Part("jobs"), hand.Objects, hand.Locks, root.Has("closing_lock"));
        return hand with
        {
            Jobs = jobs,
            WristRange = root.OptionalPart("wrist_range") is { } range ? new(range.Quantity("flexion"), range.Quantity("extension")) : null,
            Pads = jobs.Count > 0 || root.Has("pads") ? DayBinding.Pads(root.Part("pads")) : null,
            Thumb = jobs.Count > 0 || root.Has("thumb") ? DayBinding.Thumb(root.Part("thumb")) : null,
            ClosingLock = root.OptionalPart("closing_lock") is { } held ? DayBinding.ClosingLock(held) : null,
            Body = jobs.Count > 0 || root.Has("body") ? DayBinding.Body(root.Part("body"), hand) : null,
            Room = root.OptionalPart("room") is { } room ? DayBinding.Room(room, hand.Fingers) : null,
        };
    }

    /// <summary>Puts a guess that every finger shares under <c>fingers.all</c>.</summary>
    private static List<Guess> Together(IReadOnlyList<Guess> guesses, int fingerCount)
    {
        List<Guess> found = [];
        foreach (IGrouping<Guess, Guess> group in guesses.GroupBy(g => g with { Path = SharedPath(g.Path) }))
        {
            found.AddRange(group.Key.Path.Length > 0 && fingerCount > 1 && group.Count() == fingerCount ? [group.Key] : group);
        }

        return found;
    }

    private static string SharedPath(string path) => HandPath.TrySplit(path, out IReadOnlyList<PathStep>? steps) && steps is [{ Key: "fingers" }, _, _, ..]
        ? steps.Skip(2).Aggregate($"fingers.{FingerBinding.Shared}", (p, s) => HandPath.Join(p, s.Key))
        : "";
}
