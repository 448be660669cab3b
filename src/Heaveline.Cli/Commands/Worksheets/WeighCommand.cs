using System.CommandLine;
using Heaveline.Cars.Worksheets;
using Heaveline.Cli.Output;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands.Worksheets;

/// <summary>Four scales under four wheels.</summary>
internal static class WeighCommand
{
    public static Command Of(Streams streams)
    {
        var round = new Option<string[]>("--round") { Description = "One round of readings: front left, front right, rear left, rear right. Repeat it.", HelpName = "FL,FR,RL,RR" };
        var turned = new Option<string[]>("--turned") { Description = "A round with the car standing the other way round on the same scales, by its own wheels. Repeat it.", HelpName = "FL,FR,RL,RR" };
        var wheelbase = new Option<string>("--wheelbase") { Description = "From front to rear wheel centre.", HelpName = "LENGTH", Required = true };
        var track = new Option<string>("--track") { Description = "Front and rear track.", HelpName = "FRONT,REAR", Required = true };
        var json = Options.Json();
        var command = new Command(
            "weigh",
            """
            Four-scale weighing, with repeats and the car turned round: what each wheel carries, and where the centre of gravity lies.

            Example:
              heaveline worksheet weigh --round "381 kg ± 1, 362 kg ± 1, 311 kg ± 1, 306 kg ± 1" --turned "379 kg, 364 kg, 313 kg, 304 kg" --wheelbase "2.70 m" --track "1.52 m, 1.51 m"
            """)
        {
            round,
            turned,
            wheelbase,
            track,
            json,
        };
        command.SetAction(r => Run(streams, [.. Rounds(round.Name, r.GetValue(round), false), .. Rounds(turned.Name, r.GetValue(turned), true)], r.GetValue(wheelbase)!, r.GetValue(track)!, r.GetValue(json)));
        return command;
    }

    private static int Run(Streams streams, IReadOnlyList<WheelReadings> rounds, string wheelbase, string track, bool json)
    {
        var tracks = Typed.Parts("--track", track, 2);
        var sheet = WeighingSheet.Of(rounds, Typed.Amount<Length>("--wheelbase", wheelbase), Typed.Amount<Length>("--track", tracks[0]), Typed.Amount<Length>("--track", tracks[1]));
        var w = sheet.Weighing;
        string Kilograms(Amount<Mass> mass) => SheetText.Amount(mass, "kg");
        return new SheetText("weigh", "Weighing")
            .Add("front-left", "front left wheel", "kg", "F1", w.FrontLeft)
            .Add("front-right", "front right wheel", "kg", "F1", w.FrontRight)
            .Add("rear-left", "rear left wheel", "kg", "F1", w.RearLeft)
            .Add("rear-right", "rear right wheel", "kg", "F1", w.RearRight)
            .Add("total", "the whole car", "kg", "F1", sheet.Total)
            .Add("front-share", "front axle's share", "%", "F2", sheet.FrontShare)
            .Add("cross-share", "front right and rear left", "%", "F2", sheet.CrossShare)
            .Add("behind-front-axle", "centre of gravity behind the front axle", "mm", "F0", sheet.BehindFrontAxle)
            .Add("left-of-middle", "centre of gravity left of the middle", "mm", "F1", sheet.LeftOfMiddle)
            .Add("spread", "largest difference between repeats", "kg", "F1", sheet.Spread)
            .Add("turn-change", "largest change by turning the car", "kg", "F1", sheet.TurnChange)
            .Paste($"weighing: {{front-left: {Kilograms(w.FrontLeft)}, front-right: {Kilograms(w.FrontRight)}, rear-left: {Kilograms(w.RearLeft)}, rear-right: {Kilograms(w.RearRight)}}}")
            .Write(streams, sheet.Notes, json);
    }

    private static IEnumerable<WheelReadings> Rounds(string option, string[]? rounds, bool turned) => (rounds ?? []).Select(words =>
    {
        Amount<Mass>[] wheels = [.. Typed.Parts(option, words, 4).Select(w => Typed.Amount<Mass>(option, w))];
        return new WheelReadings(wheels[0], wheels[1], wheels[2], wheels[3], turned);
    });
}
