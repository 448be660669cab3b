using Heaveline.Cli.Output;
using Heaveline.Gpu;

namespace Heaveline.Cli.Commands;

/// <summary>The graphics processors of this machine.</summary>
internal static class GraphicsProcessors
{
    /// <summary>Lets large studies run there, or all that can.</summary>
    public static void Choose(Streams streams, bool all) =>
        Devices.Choose(all, why => streams.Remarks.WriteLine($"heaveline: {why}."));
}
