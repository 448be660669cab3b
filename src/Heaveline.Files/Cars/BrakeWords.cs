using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for brakes, drive and the slope of the links.</summary>
internal static class BrakeWords
{
    private static readonly Key<Amount<Plain>> FrontShare = Key.Optional(
        "front-share",
        "Front brakes' part of the whole braking force, from a roller tester.",
        Kind.Amount<Plain>(),
        "68 % ± 4",
        property: "FrontBrakeShare")
        .Usually("30 %", "95 %");
    private static readonly Key<Amount<Plain>> AntiDive = Key.Optional(
        "anti-dive",
        "Part of the load moved to the front by braking that the front links carry, negative where they add to it; 0 when left out.",
        Kind.Amount<Plain>(),
        "25 % ± 10",
        property: "AntiDiveFront")
        .Usually("-100 %", "150 %");
    private static readonly Key<Amount<Angle>> ForkRake = Key.Optional(
        "fork-rake",
        "Instead of anti-dive: slope of a telescopic fork that carries its brake, from the vertical; braking presses such a fork together.",
        Kind.Amount<Angle>(),
        "24.6° ± 1°")
        .Usually("5 deg", "45 deg");
    private static readonly Key<Amount<Plain>> AntiLift = Key.Optional(
        "anti-lift",
        "Part of the load taken off the rear by braking that the rear links hold back; 0 when left out.",
        Kind.Amount<Plain>(),
        "30 % ± 10",
        property: "AntiLiftRear")
        .Usually("-100 %", "150 %");
    private static readonly Key<Amount<Plain>> AntiSquat = Key.Optional(
        "anti-squat",
        "Part of the load moved to the driven rear axle that its links carry; 0 when left out.",
        Kind.Amount<Plain>(),
        "40 % ± 10",
        property: "AntiSquatRear")
        .Usually("-100 %", "200 %");
    private static readonly Key<Amount<Plain>> DrivenAntiLift = Key.Optional(
        "driven-anti-lift",
        "Part of the load taken off the driven front axle that its links hold back; 0 when left out.",
        Kind.Amount<Plain>(),
        "5 % ± 5",
        property: "AntiLiftFront")
        .Usually("-100 %", "150 %");
    private static readonly Key<DrivenAxle> Driven = Key.Optional(
        "driven",
        "Which wheels drive; rear when left out.",
        Kind.Choice(("front", DrivenAxle.Front), ("rear", DrivenAxle.Rear), ("both", DrivenAxle.Both)),
        "rear",
        property: "DrivenAxle");
    private static readonly Key<Amount<Length>> Radius = Key.Optional(
        "wheel-radius", "Height of the wheel centres above the ground; 0.30 m ± 4 cm when left out.", Kind.Amount<Length>(), "0.31 m ± 1 cm")
        .Usually("0.15 m", "0.55 m");

    /// <summary>The group.</summary>
    public static readonly Shape<BrakeGeometry> Shape = new Shape(
        "brakes",
        "How braking and driving forces are shared out, and what part of the load they move goes through the links instead of the springs.",
        FrontShare,
        AntiDive,
        ForkRake,
        AntiLift,
        AntiSquat,
        DrivenAntiLift,
        Driven,
        Radius)
        .As(Make);

    private static BrakeGeometry? Make(Fields f)
    {
        var driven = f.Optional(Driven, DrivenAxle.Rear);
        foreach (var (key, idle, wheels) in new[] { (AntiSquat, DrivenAxle.Front, "rear"), (DrivenAntiLift, DrivenAxle.Rear, "front") })
        {
            if (f.Has(key) && driven == idle)
            {
                f.Refuse(
                    key,
                    $"is given, but the {wheels} wheels do not drive.",
                    $"Links carry a driving force only where there is one: leave it out, or correct {Driven.Name}.");
                return null;
            }
        }

        if (f.Has(ForkRake) && f.Has(AntiDive))
        {
            f.Refuse(AntiDive, $"is given beside {ForkRake.Name}, from which it follows.", "Keep the one that was measured.");
            return null;
        }

        return new BrakeGeometry
        {
            ForkRake = f.OptionalValue(ForkRake),
            FrontBrakeShare = f.OptionalValue(FrontShare),
            AntiDiveFront = f.Optional(AntiDive, default),
            AntiLiftRear = f.Optional(AntiLift, default),
            AntiSquatRear = f.Optional(AntiSquat, default),
            AntiLiftFront = f.Optional(DrivenAntiLift, default),
            DrivenAxle = driven,
            WheelRadius = f.OptionalValue(Radius) ?? BrakeGeometry.AssumedWheelRadius,
        };
    }
}
