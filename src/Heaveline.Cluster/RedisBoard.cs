using StackExchange.Redis;

namespace Heaveline.Cluster;

/// <summary>Notices in Redis: a set of their names, and a key for each, which goes by itself.</summary>
/// <param name="options">How to connect.</param>
/// <param name="crew">Whose they are.</param>
internal sealed class RedisBoard(ConfigurationOptions options, string crew) : INoticeBoard
{
    private readonly string names = $"heaveline:crew:{crew}";
    private ConnectionMultiplexer? session;

    /// <inheritdoc/>
    public async Task Put(string name, string words, TimeSpan stays)
    {
        var notices = await Notices().ConfigureAwait(false);
        await notices.StringSetAsync(Key(name), words, stays).ConfigureAwait(false);
        await notices.SetAddAsync(names, name).ConfigureAwait(false);
        // Of a crew that is no more nothing stays.
        await notices.KeyExpireAsync(names, stays + stays).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public async Task Take(string name)
    {
        var notices = await Notices().ConfigureAwait(false);
        await notices.SetRemoveAsync(names, name).ConfigureAwait(false);
        await notices.KeyDeleteAsync(Key(name)).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<string>> All()
    {
        var notices = await Notices().ConfigureAwait(false);
        var all = new List<string>();
        foreach (var name in await notices.SetMembersAsync(names).ConfigureAwait(false))
        {
            var words = await notices.StringGetAsync(Key(name!)).ConfigureAwait(false);
            if (words.HasValue)
            {
                all.Add(words!);
            }
            else
            {
                await notices.SetRemoveAsync(names, name).ConfigureAwait(false);
            }
        }

        return all;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (session is { } own)
        {
            await own.DisposeAsync().ConfigureAwait(false);
        }
    }

    private string Key(string name) => $"{names}:{name}";

    private async Task<IDatabase> Notices() =>
        (session ??= await ConnectionMultiplexer.ConnectAsync(options).ConfigureAwait(false)).GetDatabase();
}
