using Heaveline.Numerics;

namespace Heaveline.Tests.Numerics;

public class ParallelLoopTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(-1)]
    public void What_the_first_piece_throws_comes_out_as_it_was_thrown(int degree)
    {
        for (var again = 0; again < 20; again++)
        {
            var done = new int[200];
            var thrown = Assert.Throws<InvalidOperationException>(() => ParallelLoop.Each(done.Length, degree, i =>
            {
                // The later ones fail sooner.
                if (i % 37 == 36)
                {
                    Thread.Sleep(200 - i > 100 ? 5 : 0);
                    throw new InvalidOperationException($"{i}");
                }

                done[i]++;
            }, CancellationToken.None));
            Assert.Equal("36", thrown.Message);
            Assert.All(done.Take(36), times => Assert.Equal(1, times));
        }
    }

    [Fact]
    public void Every_piece_is_done_once_and_what_they_have_in_common_is_let_go()
    {
        var (done, held) = (new int[1000], 0);
        ParallelLoop.Each(
            done.Length,
            3,
            () => Interlocked.Increment(ref held),
            (i, _) => Interlocked.Increment(ref done[i]),
            _ => Interlocked.Decrement(ref held),
            TestContext.Current.CancellationToken);
        Assert.All(done, times => Assert.Equal(1, times));
        Assert.Equal(0, held);
    }

    [Fact]
    public void Work_that_is_stopped_says_so()
    {
        using var stop = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() => ParallelLoop.Each(1000, 2, i =>
        {
            stop.Cancel();
            stop.Token.ThrowIfCancellationRequested();
        }, stop.Token));
    }
}
