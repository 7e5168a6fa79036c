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
            Signals = root.OptionalPart("signals") is { } signals ? SignalsBinding.Bind(signals) : null,
            Tolerances = HeldThingsBinding.Tolerances(root.Part("tolerances"), fingers, objects),
            Files = HeldThingsBinding.Files(root.Part("files")),
        };
        DriveBinding.CheckTogether(root, hand.PullLink, hand.Crank, hand.Rail);
        return hand with { Guesses = Together(run.Guesses, fingers.Count) };
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
