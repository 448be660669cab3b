using Heaveline.Press;

namespace Heaveline.Tests.Press;

public class SampleTests
{
    /// <summary>Set HEAVELINE_SAMPLES to a folder to keep the files there and look at them.</summary>
    [Fact]
    public void Every_kind_of_figure_is_written_in_every_format()
    {
        var kept = Environment.GetEnvironmentVariable("HEAVELINE_SAMPLES");
        var folder = kept ?? Directory.CreateTempSubdirectory("heaveline-samples-").FullName;
        try
        {
            foreach (var (name, figure) in Samples.All)
            {
                foreach (var ending in new[] { "svg", "png", "pdf" })
                {
                    var path = Path.Combine(folder, $"{name}.{ending}");
                    FigureFile.Write(figure, path);
                    Assert.True(new FileInfo(path).Length > 2000, $"{path} is nearly empty");
                }
            }
        }
        finally
        {
            if (kept is null)
            {
                Directory.Delete(folder, recursive: true);
            }
        }
    }
}
