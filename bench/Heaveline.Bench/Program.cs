using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace Heaveline.Bench;

internal static class Program
{
    private static int Main(string[] args)
    {
        if (args.Length > 0 && args[0] == "race")
        {
            return WidthRace.Run(args[1..]);
        }

        if (args is ["stages"])
        {
            return Stages.Run();
        }

        if (args is ["peers", var peer, var cars])
        {
            return PeerRace.Run(peer, cars);
        }

        if (args is ["reach", var reached, ..])
        {
            return Reach.Run(reached, args[2..]);
        }

        if (args is ["steps", var stepped, ..])
        {
            return StepErrors.Run(stepped, args[2..]);
        }

        if (args is ["demo", var garage])
        {
            return DemoCars.Run(garage);
        }

        if (args is ["choose", var chosen, ..])
        {
            return PartChoices.Run(chosen, args[2..]);
        }

        if (args is ["helped"])
        {
            return HelpedPieces.Run();
        }

        if (args is ["helped", "killed"])
        {
            KilledHelper.Run();
            return 0;
        }

        if (args is [KilledHelper.Word, var port, var code])
        {
            return KilledHelper.Help(port, code);
        }

        if (args is ["ride", var ridden])
        {
            return RideRace.Run(ridden);
        }

        if (args.Length > 0 && args[0] == "maps")
        {
            return RuleMaps.Run();
        }

        if (args.Length > 0 && args[0] == "growth")
        {
            return Growth.Run(args[1..]);
        }

        if (args is ["lane", var lane])
        {
            return LaneLogs.Write(lane);
        }

        if (args.Length > 0 && args[0] == "drives")
        {
            return DriveLogs.Run(args[1..]);
        }

        if (args.Length > 0 && args[0] == "test-days")
        {
            return TestDays.Run(args[1..]);
        }

        if (args.Length > 0 && args[0] == "forecasts")
        {
            return Forecasts.Run(args[1..]);
        }

        if (args is ["event-widths"])
        {
            return EventWidths.Run();
        }

        if (args.Length > 0 && args[0] == "forward")
        {
            return ForwardCover.Run(args[1..]);
        }

        if (args.Length > 0 && args[0] == "films")
        {
            return FilmCover.Run(args[1..]);
        }

        if (args.Length > 0 && args[0] == "ties")
        {
            return TieCover.Run(args[1..]);
        }

        if (args.Length > 0 && args[0] == "drive-cars")
        {
            return DriveCars.Run(args[1..]);
        }

        if (args is ["before-after", var pairs])
        {
            return BeforeAfters.Run(int.Parse(pairs, System.Globalization.CultureInfo.InvariantCulture));
        }

        if (args.Length > 0 && args[0] == "doubts")
        {
            return Doubts.Run(args[1..]);
        }

        if (args.Length > 0 && args[0] == "accuracy")
        {
            return SpectrumAccuracy.Run();
        }

        var config = DefaultConfig.Instance.AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance));
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args, config);
        return 0;
    }
}
