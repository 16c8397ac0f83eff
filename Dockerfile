# syntax=docker/dockerfile:1
# Sizes, and what the trimming leaves out, are in DEVELOPERS.md.

FROM node:24-bookworm-slim AS build
WORKDIR /app
COPY package.json package-lock.json .npmrc ./
RUN npm ci --no-audit
COPY tsconfig.json ./
COPY prisma prisma
COPY src src
RUN npm run build && find dist \( -name '*.map' -o -name '.tsbuildinfo' \) -delete

FROM node:24-bookworm-slim AS packages
WORKDIR /app
COPY package.json package-lock.json .npmrc ./
# "optional" are the Prisma CLI and TypeScript, which the Prisma client only names as its possible neighbours.
RUN npm ci --omit=dev --omit=optional --no-audit \
  && find node_modules \( -name '*.map' -o -name '*.d.ts' -o -name '*.d.mts' -o -name '*.d.cts' \) -delete \
  && find node_modules/@prisma/client/runtime -name 'query_compiler_*' ! -name 'query_compiler_fast_bg.postgresql.*mjs' -delete

FROM node:24-bookworm-slim AS production
WORKDIR /app
ENV NODE_ENV=production HOST=0.0.0.0 PORT=4000 DATA_DIR=/data
RUN mkdir /data && chown node:node /data
COPY --from=packages /app/node_modules node_modules
COPY --from=build /app/dist dist
COPY package.json ./
COPY prisma/migrations prisma/migrations
COPY seed seed
USER node
VOLUME /data
EXPOSE 4000
HEALTHCHECK --interval=30s --timeout=5s --start-period=60s --retries=3 \
  CMD ["node", "-e", "fetch(`http://127.0.0.1:${process.env.PORT}/health/live`).then((answer) => process.exit(answer.ok ? 0 : 1), () => process.exit(1))"]
CMD ["node", "dist/src/main.js"]
