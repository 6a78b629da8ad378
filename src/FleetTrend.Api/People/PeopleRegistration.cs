using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Mail;
using FleetTrend.Store;
using FleetTrend.Store.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Api.People;

/// <summary>Puts people into the host: the framework's identity library keeps hashes, lock-outs, stamps and the tokens of links.</summary>
internal static class PeopleRegistration
{
    /// <summary>How long a link for a new password is good.</summary>
    public static readonly TimeSpan LinkLasts = TimeSpan.FromHours(24);

    /// <summary>Wrong passwords in a row that lock an account.</summary>
    public const int WrongPasswordsThatLock = 10;

    /// <summary>How long it stays locked.</summary>
    public static readonly TimeSpan LockLasts = TimeSpan.FromMinutes(15);

    public static IServiceCollection AddPeople(this IServiceCollection services, HostSettings settings)
    {
        services.AddScoped(provider => provider.GetRequiredService<IDbContextFactory<FleetDbContext>>().CreateDbContext());
        services.AddIdentityCore<Person>(identity =>
            {
                // Who may be called what, and how long a password is, Intake/Rules/PersonRules decides, which names the field.
                identity.User.AllowedUserNameCharacters = "";
                identity.User.RequireUniqueEmail = true;
                identity.Password = new PasswordOptions
                {
                    RequiredLength = 1,
                    RequireDigit = false,
                    RequireLowercase = false,
                    RequireUppercase = false,
                    RequireNonAlphanumeric = false,
                };
                identity.Lockout.MaxFailedAccessAttempts = WrongPasswordsThatLock;
                identity.Lockout.DefaultLockoutTimeSpan = LockLasts;
            })
            .AddEntityFrameworkStores<FleetDbContext>()
            .AddTokenProvider<DataProtectorTokenProvider<Person>>(TokenOptions.DefaultProvider);
        services.Configure<DataProtectionTokenProviderOptions>(token => token.TokenLifespan = LinkLasts);
        services.AddScoped<SignIns>();
        services.AddScoped<Accounts>();
        if (settings.Mail.Smtp is { } smtp)
            services.AddSingleton<IMailSender>(new SmtpMailSender(smtp));
        services.AddSingleton<AccountMails>();
        services.AddHostedService(provider => provider.GetRequiredService<AccountMails>());
        return services;
    }
}
