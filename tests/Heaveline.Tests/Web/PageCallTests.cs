using Heaveline.Web.Serving;
using Microsoft.JSInterop;

namespace Heaveline.Tests.Web;

/// <summary>Calls into a browser whose page may go.</summary>
public sealed class PageCallTests
{
    public static TheoryData<Exception> Ends { get; } =
        [new JSDisconnectedException("gone"), new TaskCanceledException(), new OperationCanceledException(), new ObjectDisposedException("circuit")];

    [Theory]
    [MemberData(nameof(Ends))]
    public async Task A_page_that_goes_during_a_call_fells_nothing(Exception end)
    {
        var isPast = false;
        await PageCall.WhileThere(async () =>
        {
            await Task.Yield();
            if (end is not null)
            {
                throw end;
            }

            isPast = true;
        });
        Assert.False(isPast);
    }

    [Fact]
    public async Task What_goes_wrong_on_a_page_that_is_there_is_told() => await Assert.ThrowsAsync<JSException>(
        () => PageCall.WhileThere(() => throw new JSException("no such function")));

    [Fact]
    public void No_page_looks_for_its_end_by_itself()
    {
        var pages = Path.Combine(House.Checkout.Root, "src", "Heaveline.Web");
        string[] own =
        [
            .. Directory.EnumerateFiles(pages, "*", SearchOption.AllDirectories)
                .Where(file => file.EndsWith(".razor", StringComparison.Ordinal) || file.EndsWith(".cs", StringComparison.Ordinal))
                .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
                .Where(file => File.ReadAllText(file).Contains(nameof(JSDisconnectedException), StringComparison.Ordinal))
                .Select(Path.GetFileName).OfType<string>(),
        ];
        Assert.Equal(["PageCall.cs"], own);
    }
}
